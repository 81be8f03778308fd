package gable.fuzz;

import java.util.ArrayList;
import java.util.List;

/** Makes mutants: the same seed and number give the same mutant of the same list of seeds. */
final class Mutator {

  /**
   * A package with faults.
   *
   * @param number its number in the run
   * @param seed name of the package that it was made from
   * @param faults kinds of the faults, in the order in which they were planted
   * @param bytes the package
   */
  @SuppressWarnings("ArrayRecordComponent") // a value on its way to one reader, never compared
  record Mutant(long number, String seed, List<String> faults, byte[] bytes) {}

  private final List<Seeds.Seed> seeds;
  private final long run;

  /**
   * Makes mutants of one run.
   *
   * @param seeds smallest first; small ones are taken more often, since they are quick
   */
  Mutator(List<Seeds.Seed> seeds, long run) {
    this.seeds = List.copyOf(seeds);
    this.run = run;
  }

  Mutant mutant(long number) {
    Chance chance = Chance.of(run, number);
    Seeds.Seed seed = seeds.get(chance.small(seeds.size()));
    List<String> faults = new ArrayList<>();
    Draft draft = seed.draft();
    int inside = chance.either(0, 1, 1, 1, 2, 2, 3);
    for (int i = 0; i < inside; i++) {
      faults.add(plant(draft, chance));
    }
    byte[] bytes = inside == 0 ? seed.bytes().clone() : draft.packed(chance.oneIn(3));
    if (inside == 0 || chance.oneIn(10)) {
      int outside = 1 + chance.small(4);
      for (int i = 0; i < outside; i++) {
        bytes = PackageFaults.planted(bytes, chance);
        faults.add("package");
      }
    }
    return new Mutant(number, seed.name(), faults, bytes);
  }

  private static String plant(Draft draft, Chance chance) {
    int kind = chance.below(10);
    if (kind < 2) {
      ItemFaults.plant(draft, chance);
      return "item";
    }
    if (kind < 7) {
      draft.changeXml(chance, text -> MarkupFaults.planted(text, chance));
      return "markup";
    }
    draft.changeModel(chance, text -> MeshFaults.planted(text, chance));
    return "mesh";
  }
}
