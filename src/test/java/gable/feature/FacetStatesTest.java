package gable.feature;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FacetStatesTest {

  private static IndexSet first() {
    IndexSet set = new IndexSet(2);
    set.add(0);
    return set;
  }

  /** The bound on all work: whatever fails over a facet, it fails a bounded number of times. */
  @Test
  void barsAFacetOverWhichWallsFailAgainAndAgain() {
    FacetStates states = new FacetStates(2);
    int failures = 0;
    while (!states.isBarred(0)) {
      states.failed(first(), 1);
      failures++;
    }
    assertThat(failures).isLessThan(20);
    assertThat(states.isBarred(1)).isFalse();
  }

  @Test
  void aFacetStopsBeingASeedBeforeItIsBarred() {
    FacetStates states = new FacetStates(2);
    while (states.isFree(0)) {
      states.failed(first(), 1);
    }
    assertThat(states.isBarred(0)).isFalse();
  }

  @Test
  void aSeedThatWasTriedMayStillBePartOfAWall() {
    FacetStates states = new FacetStates(2);
    states.tried(0);
    assertThat(states.isFree(0)).isFalse();
    assertThat(states.isBarred(0)).isFalse();
  }

  @Test
  void aWallStaysAWall() {
    FacetStates states = new FacetStates(2);
    states.wall(new int[] {0});
    states.failed(first(), FacetStates.SURE);
    states.tried(0);
    assertThat(states.isWall(0)).isTrue();
    assertThat(states.isBarred(0)).isTrue();
  }

  /** Whoever looks ahead must know when what was seen holds no more, and only then. */
  @Test
  void itsEpochChangesWhenAFacetIsBarredAndNotBefore() {
    FacetStates states = new FacetStates(2);
    states.tried(0);
    int before = states.epoch();
    while (!states.isBarred(0)) {
      assertThat(states.epoch()).isEqualTo(before);
      states.failed(first(), 1);
    }
    assertThat(states.epoch()).isNotEqualTo(before);
    int barred = states.epoch();
    states.wall(new int[] {1});
    assertThat(states.epoch()).isNotEqualTo(barred);
  }
}
