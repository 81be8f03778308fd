package gable.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gable.plan.Limits.Joint;
import gable.plan.Limits.Joint.Webs;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sizes that cannot be meant are refused; the usual ones lie within common practice. */
class LimitsTest {

  /** Common practice, no source: lead-in 0.3 to 0.5, web 0.8 to 1.2, clearance 0.15 to 0.25. */
  @Test
  void theUsualJointLiesWithinCommonPractice() {
    assertThat(Joint.USUAL.tip()).isEmpty();
    assertThat(Joint.USUAL.leadIn()).isBetween(0.3, 0.5);
    assertThat(Joint.USUAL.webWidth()).isBetween(0.8, 1.2);
    assertThat(Joint.USUAL.clearance()).isBetween(0.15, 0.25);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -0.4, Double.NaN, Double.POSITIVE_INFINITY, 5.001})
  void sizesThatCannotBeMeantAreRefused(double size) {
    OptionalDouble some = OptionalDouble.of(size);
    OptionalDouble none = OptionalDouble.empty();

    assertThatThrownBy(() -> new Joint(some, 0.4, 0.8, 0.2, Webs.BELOW))
        .hasMessageContaining("tip");
    assertThatThrownBy(() -> new Joint(none, size, 0.8, 0.2, Webs.BELOW))
        .hasMessageContaining("in");
    assertThatThrownBy(() -> new Joint(none, 0.4, size, 0.2, Webs.BELOW))
        .hasMessageContaining("web width");
    assertThatThrownBy(() -> new Joint(none, 0.4, 0.8, size, Webs.BELOW))
        .hasMessageContaining("clearance");
    if (size <= 0 || Double.isNaN(size)) {
      assertThatThrownBy(() -> Joint.webOf(size)).hasMessageContaining("line width");
    }
  }

  @Test
  void otherSlopesAndJointsKeepTheRest() {
    Joint joint = new Joint(OptionalDouble.of(1), 0.3, 1.2, 0.15, Webs.BOTH);
    Limits limits = new Limits(0.8, 3, 40, 1.6, 4).withJoint(joint).withSlope(0.9);

    assertThat(limits).isEqualTo(new Limits(0.9, 3, 40, 1.6, 4, joint));
  }
}
