package gable.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import gable.fixture.Lathe;
import gable.mesh.Mesh;
import gable.reshaper.TipChamfer;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What a fine tip costs, counted in bytes that are made for it and not in time. A tool for a tip of
 * n sides has 2 n planes and meets some 8 n facets, so the cost grows with the square; what each of
 * these pairs may cost is bounded here.
 */
class TipWorkTest {

  private static final int SIDES = 128;

  /** Measured: 131 MB; 250 MB when each piece measured its tool and each plane copied each face. */
  private static final long MOST = 160_000_000;

  @Test
  void aTipOfManySidesMakesFewBytesForEachPairOfFacetAndPlane() {
    Mesh before =
        Lathe.ofSides(SIDES, 0.1).ring(-3, 8).ring(0, 8).ring(0, 3).ring(12, 3).sketch().mesh();
    ProvedRun.of(before, List.of(new TipChamfer())); // loads what is needed
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadAllocatedBytes();

    ProvedRun.of(before, List.of(new TipChamfer()));

    long bytes = threads.getCurrentThreadAllocatedBytes() - start;
    assertThat(bytes).isLessThan(MOST);
  }
}
