package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.opc.PartRoles;
import gable.place.Placements;
import gable.threemf.ModelLimits;
import gable.threemf.ModelPackage;
import gable.validate.Guard;
import java.util.ArrayList;
import java.util.List;

/**
 * A file that was read, held against the standard and laid on the plate.
 *
 * @param model its objects and build
 * @param conformance rules that it breaks already
 * @param plate what is to be done with its objects
 * @param notices what is to be known of it so far
 */
record Laid(ModelPackage model, Conformance conformance, Plate plate, List<Notice> notices) {

  Laid {
    notices = List.copyOf(notices);
  }

  static Laid of(OpcPackage content, Work work) throws PackageException {
    List<Notice> notices = new ArrayList<>(Problems.notices(content.problems()));
    PartRoles roles = PartRoles.of(content);
    Guard guard = new Guard(content, roles);
    ModelPackage model =
        ModelPackage.read(
            content, ModelLimits.USUAL, guard::visitor, Beside.aside(work.settings().threads()));
    Conformance conformance = Conformance.of(guard.finish());
    conformance.notice().ifPresent(notices::add);
    notices.addAll(Problems.notices(model.problems()));
    work.goOn();
    notices.addAll(Problems.notices(roles.problems()));
    Placements placements = Placements.of(model, work.settings().up(), ModelLimits.USUAL);
    Plate plate =
        new Plate(placements, work, conformance, part -> signed(roles, part, model.root().name()));
    notices.addAll(plate.notices());
    return new Laid(model, conformance, plate, notices);
  }

  /** A change of an object may change its build item in the root part, too. */
  private static boolean signed(PartRoles roles, String part, String root) {
    return roles.isSigned() && (roles.isSigned(part) || roles.isSigned(root));
  }
}
