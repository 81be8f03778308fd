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
 * The parts of a file that is only looked at.
 *
 * @param tasks one for each object and direction, in the order of the build
 * @param examined their features
 * @param notices what is to be known of the file
 */
record Stock(List<ObjectTask> tasks, List<Examined> examined, List<Notice> notices) {

  Stock {
    tasks = List.copyOf(tasks);
    examined = List.copyOf(examined);
    notices = List.copyOf(notices);
  }

  /** Reads a file and finds the features of its objects. */
  static Stock of(OpcPackage content, Work work) throws PackageException {
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
    Placements placements = Placements.of(model, work.settings().up(), ModelLimits.USUAL);
    Plate plate =
        new Plate(
            placements,
            work,
            conformance,
            part -> FileRun.signed(roles, part, model.root().name()));
    notices.addAll(plate.notices());
    List<ObjectTask> tasks = plate.tasks();
    List<Examined> examined = new Joinery(work).examined(tasks);
    examined.forEach(each -> each.unfit().ifPresent(notices::add));
    return new Stock(tasks, examined, notices);
  }

  /** True if no object of it could be examined. */
  boolean isNothing() {
    return examined.stream().noneMatch(each -> each.unfit().isEmpty());
  }
}
