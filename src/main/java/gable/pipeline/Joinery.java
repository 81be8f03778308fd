package gable.pipeline;

import gable.pairs.Halves;
import gable.pairs.Pairing;
import gable.pairs.Part;
import gable.pairs.Solid;
import gable.plan.Reason;
import gable.plan.Reshaper;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * All objects of a file the whole way: examined, paired, reshaped. The order of the objects and the
 * number of threads have no influence on what becomes of each.
 */
final class Joinery {

  /**
   * Facets of all objects together up to which meshes are kept between the two steps. They take
   * about 130 bytes each; more are made ready a second time.
   */
  private static final long KEPT = 2_000_000;

  /** Reasons that say that a half of a joint is as it should be. */
  private static final Set<String> READY = Set.of(Reason.HAS_WEB, Reason.ROOM_ENOUGH);

  private final Work work;
  private final Gang gang;

  /** Names of those that make webs and slots. */
  private final Set<String> slotting;

  Joinery(Work work) {
    this.work = work;
    this.gang = new Gang(work);
    this.slotting =
        work.reshapers().stream()
            .filter(reshaper -> reshaper.phase() == Reshaper.Phase.SLOT)
            .map(Reshaper::name)
            .collect(Collectors.toUnmodifiableSet());
  }

  /**
   * What becomes of the objects.
   *
   * @param done in the order of the tasks
   * @param joints which belong together
   */
  record Result(List<ObjectTask.Done> done, Joints joints) {}

  /** The features of each object. */
  List<Examined> examined(List<ObjectTask> tasks) {
    boolean keep = tasks.size() <= 1 || tasks.stream().mapToLong(ObjectTask::facets).sum() <= KEPT;
    return gang.run(tasks, task -> task.examine(keep));
  }

  /**
   * The whole way.
   *
   * @param own the objects of the file
   * @param stocks those of its partners; what could be made of them counts, but is not kept
   */
  Result run(List<ObjectTask> own, List<Stock> stocks) {
    List<ObjectTask> tasks = new ArrayList<>(own);
    List<Examined> examined = new ArrayList<>(examined(own));
    List<Part> parts = new ArrayList<>(parts(0, own, examined));
    List<Integer> fileOf = new ArrayList<>(Collections.nCopies(own.size(), 0));
    for (int k = 0; k < stocks.size(); k++) {
      Stock stock = stocks.get(k);
      tasks.addAll(stock.tasks());
      examined.addAll(stock.examined());
      parts.addAll(parts(k + 1, stock.tasks(), stock.examined()));
      fileOf.addAll(Collections.nCopies(stock.tasks().size(), k + 1));
    }
    Pairing pairing = Pairing.of(parts, work.settings().limits().slope());
    List<ObjectPlace> places = tasks.stream().map(ObjectTask::place).toList();
    Bench bench = new Bench(tasks, examined, new Partners(pairing, places), own.size());
    List<ObjectTask.Done> done = whole(bench, new ArrayList<>(steps(bench)));
    return new Result(done, Joints.of(pairing, fileOf::get, places::get).ofOwn());
  }

  /**
   * All objects of a run.
   *
   * @param own how many of them, the first, are those of the file
   */
  private record Bench(
      List<ObjectTask> tasks, List<Examined> examined, Partners partners, int own) {

    ObjectTask.Draft draft(int number) {
      return tasks.get(number).reshape(examined.get(number), partners.of(number));
    }
  }

  /** Each object once; of partners those with webs only, since a web needs to know of its slot. */
  private List<Step> steps(Bench bench) {
    AtomicInteger finished = new AtomicInteger();
    return gang.run(
        IntStream.range(0, bench.tasks.size()).boxed().toList(),
        n -> {
          Step step = step(bench, n);
          int done = n < bench.own ? finished.incrementAndGet() : finished.get();
          work.observer().progress(done, bench.own);
          return step;
        });
  }

  /** An object that is done, or that waits for the other halves of its joints. */
  private record Step(Optional<ObjectTask.Done> done, Optional<ObjectTask.Draft> draft) {}

  private Step step(Bench bench, int number) {
    boolean waits = !slotting.isEmpty() && bench.partners.hasWebs(number);
    if (!waits && number >= bench.own) {
      return new Step(Optional.empty(), Optional.empty());
    }
    ObjectTask.Draft draft = bench.draft(number);
    return waits
        ? new Step(Optional.empty(), Optional.of(draft))
        : new Step(Optional.of(bench.tasks.get(number).finish(draft)), Optional.empty());
  }

  /**
   * Makes objects again while there are joints of which one half only could be made. Each round
   * allows fewer webs, so there is a last one.
   */
  private List<ObjectTask.Done> whole(Bench bench, List<Step> steps) {
    List<Step> first = List.copyOf(steps);
    List<Integer> again = halves(bench.partners, steps);
    while (!again.isEmpty()) {
      List<ObjectTask.Draft> drafts = gang.run(again, bench::draft);
      for (int k = 0; k < again.size(); k++) {
        steps.set(again.get(k), new Step(Optional.empty(), Optional.of(drafts.get(k))));
      }
      again = halves(bench.partners, steps);
    }
    List<ObjectTask.Done> done = new ArrayList<>();
    for (int n = 0; n < bench.own; n++) {
      ObjectTask task = bench.tasks.get(n);
      Step step = steps.get(n);
      Optional<ObjectTask.Draft> before = first.get(n).draft;
      done.add(
          step.done.orElseGet(
              () -> task.finish(explained(step.draft.orElseThrow(), before.orElseThrow()))));
    }
    return done;
  }

  /** What could not be made at first keeps the reason that it had then, which says more. */
  private ObjectTask.Draft explained(ObjectTask.Draft last, ObjectTask.Draft first) {
    Map<String, FeatureResult> before = new HashMap<>();
    features(first.result()).forEach(each -> before.put(each.feature().id(), each));
    List<FeatureResult> explained = new ArrayList<>();
    for (FeatureResult now : features(last.result())) {
      List<Change> then = before.getOrDefault(now.feature().id(), now).changes();
      List<Change> changes = now.changes().stream().map(c -> explained(c, then)).toList();
      explained.add(changes.equals(now.changes()) ? now : FeatureResult.of(now.feature(), changes));
    }
    ObjectResult result =
        last.result()
            .fold(any -> new ObjectResult.Examined(any.place(), explained), skipped -> skipped);
    return new ObjectTask.Draft(result, last.skin(), last.edit());
  }

  private Change explained(Change now, List<Change> then) {
    return then.stream()
        .filter(change -> now.outcome() == Outcome.LEFT && slotting.contains(now.by()))
        .filter(change -> change.by().equals(now.by()) && change.outcome() == Outcome.LEFT)
        .findFirst()
        .orElse(now);
  }

  private List<Integer> halves(Partners partners, List<Step> steps) {
    return partners.denyHalves((part, id) -> half(steps.get(part), id)).stream().sorted().toList();
  }

  private Partners.Half half(Step step, String id) {
    return step.draft.stream()
        .flatMap(draft -> features(draft.result()).stream())
        .filter(feature -> feature.feature().id().equals(id))
        .flatMap(feature -> feature.changes().stream())
        .filter(change -> slotting.contains(change.by()))
        .map(Joinery::half)
        .min(Comparator.naturalOrder())
        .orElse(Partners.Half.NONE);
  }

  private static Partners.Half half(Change change) {
    if (change.outcome() == Outcome.RESHAPED) {
      return Partners.Half.MADE;
    }
    return change.reason().map(Reason::code).filter(READY::contains).isPresent()
        ? Partners.Half.READY
        : Partners.Half.NONE;
  }

  private static List<FeatureResult> features(ObjectResult object) {
    return object.fold(ObjectResult.Examined::features, skipped -> List.of());
  }

  /** The parts that objects are to the matching. */
  static List<Part> parts(int file, List<ObjectTask> tasks, List<Examined> examined) {
    List<Part> parts = new ArrayList<>();
    for (int n = 0; n < tasks.size(); n++) {
      ObjectTask task = tasks.get(n);
      Examined known = examined.get(n);
      Halves halves = Halves.of(known.features());
      parts.add(
          new Part(
              file,
              new Likeness(task.meshOfFile()),
              halves.pins(),
              halves.bores(),
              task.place().uses().stream().map(ObjectPlace.Use::fromFirst).toList(),
              once(task, known)));
    }
    return parts;
  }

  /** The body, made ready when it is asked for the first time. */
  private static Solid once(ObjectTask task, Examined examined) {
    Map<Boolean, Solid> made = new HashMap<>();
    return point -> made.computeIfAbsent(true, any -> task.prepared(examined).solid()).holds(point);
  }
}
