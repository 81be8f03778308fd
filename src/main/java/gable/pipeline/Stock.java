package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
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
    Laid laid = Laid.of(content, work);
    List<Notice> notices = new ArrayList<>(laid.notices());
    List<ObjectTask> tasks = laid.plate().tasks();
    List<Examined> examined = new Joinery(work).examined(tasks);
    examined.forEach(each -> each.unfit().ifPresent(notices::add));
    return new Stock(tasks, examined, notices);
  }

  /** True if no object of it could be examined. */
  boolean isNothing() {
    return examined.stream().noneMatch(each -> each.unfit().isEmpty());
  }
}
