package gable.pipeline;

import gable.opc.OpcPackage;
import gable.opc.PackageException;
import gable.pairs.Pairing;
import gable.pairs.Part;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads some files, finds the features of their objects and pairs them. Used once. */
final class PairsRun {

  private final Work work;
  private final List<PairsResult.Looked> files = new ArrayList<>();
  private final List<Part> parts = new ArrayList<>();
  private final List<ObjectPlace> places = new ArrayList<>();
  private final List<Integer> fileOf = new ArrayList<>();

  PairsRun(Work work) {
    this.work = work;
  }

  PairsResult run(List<Input> inputs) {
    inputs.forEach(this::look);
    Pairing pairing = Pairing.of(parts, work.settings().limits().slope());
    return new PairsResult(files, Joints.of(pairing, fileOf::get, places::get));
  }

  private void look(Input input) {
    Source source = Source.unread(input.name());
    try {
      Opened opened = Opened.of(input);
      source = opened.source();
      try (OpcPackage content = opened.content()) {
        files.add(looked(source, content));
      }
    } catch (PackageException e) {
      FileResult.Rejected refused = Problems.invalid(source, e);
      files.add(
          new PairsResult.Looked(source, Optional.of(refused.reason()), refused.notices(), false));
    } catch (IOException e) {
      throw new IllegalStateException("closing what was only read does not fail", e);
    }
  }

  private PairsResult.Looked looked(Source source, OpcPackage content) throws PackageException {
    Stock stock = Stock.of(content, work);
    parts.addAll(Joinery.parts(files.size(), stock.tasks(), stock.examined()));
    stock.tasks().forEach(task -> places.add(task.place()));
    stock.tasks().forEach(task -> fileOf.add(files.size()));
    return new PairsResult.Looked(source, Optional.empty(), stock.notices(), stock.isNothing());
  }
}
