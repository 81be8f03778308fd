package gable.plan;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Sentences at the ends of their range, where the usual one would read badly. */
class ReasonTest {

  @Test
  void aWallThatGoesAllAroundIsNotSaidToCoverOnlyAllOfATurn() {
    assertThat(Reason.notRound(359.6).sentence())
        .doesNotContain("only")
        .contains("goes all around");
    assertThat(Reason.notRound(359.4).sentence()).contains("only 359 of 360 degrees");
    assertThat(Reason.notRound(359.6).code()).isEqualTo(Reason.notRound(200).code());
  }

  @Test
  void aRoofThatLeavesNothingIsSaidToBreakThrough() {
    assertThat(Reason.thinRoof(0.004, 1.2).sentence())
        .contains("break through")
        .contains("1.20 mm")
        .doesNotContain("0.00");
    assertThat(Reason.thinRoof(0.006, 1.2).sentence()).contains("would leave 0.01 mm");
    assertThat(Reason.thinRoof(0, 1.2).code()).isEqualTo(Reason.thinRoof(1, 1.2).code());
  }
}
