package gable.plugin;

import static org.assertj.core.api.Assertions.assertThat;

import gable.feature.Feature;
import gable.feature.Surroundings;
import gable.geom.Plane;
import gable.geom.Vec3;
import gable.pipeline.FileResult;
import gable.pipeline.Gable;
import gable.pipeline.Input;
import gable.pipeline.Observer;
import gable.pipeline.Settings;
import gable.plan.ConvexTool;
import gable.plan.Cut;
import gable.plan.Limits;
import gable.plan.Measure;
import gable.plan.Operation;
import gable.plan.Proposal;
import gable.plan.Reason;
import gable.plan.Reshape;
import gable.plan.Reshaper;
import gable.plan.ToolPlane;
import gable.plan.Variant;
import gable.validate.Verdict;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whatever bodies a reshaper asks for, the file comes out sound or as it was. The bodies are drawn
 * by chance around a bore, many of them in bad places: through vertices, in planes of faces, thin
 * as a hair, with snaps and measures that lie.
 */
class NonsenseToolsTest {

  private static final int BODIES = 2;

  private static final List<ToolPlane.Role> ROLES = List.of(ToolPlane.Role.values());

  /** Proposes what chance says. */
  private static final class Chance implements Reshaper {
    private final Random random;

    Chance(long seed) {
      this.random = new Random(seed);
    }

    @Override
    public String name() {
      return "chance";
    }

    @Override
    public Phase phase() {
      return Phase.SLOT;
    }

    @Override
    public String summary() {
      return "proposes what chance says";
    }

    @Override
    public Optional<Proposal> propose(Feature feature, Surroundings around, Limits limits) {
      List<Variant> ladder = new ArrayList<>();
      while (ladder.size() < BODIES) {
        Operation how = random.nextInt(3) == 0 ? Operation.ADD : Operation.SUBTRACT;
        Measure lie = Measure.length("bridge", random.nextInt(3) * 5.0);
        try {
          ConvexTool tool = tool(feature, around.size());
          ladder.add(new Variant("odd", List.of(new Cut(how, tool)), List.of(lie)));
        } catch (IllegalArgumentException e) {
          // bounds nothing: not even a proposal
        }
      }
      return Optional.of(new Reshape(ladder, Reason.notProved("no body of chance")));
    }

    private ConvexTool tool(Feature feature, double size) {
      double r = feature.radius();
      Vec3 near = feature.axis().origin().plus(direction().times(r * random.nextInt(3)));
      List<ToolPlane> planes = new ArrayList<>();
      for (int k = 0; k < 4 + random.nextInt(8); k++) {
        double away = random.nextInt(4) == 0 ? 1e-6 : r * random.nextDouble() * 3;
        double snap = random.nextInt(4) == 0 ? r * random.nextDouble() : 0;
        Vec3 out = direction();
        Plane plane = new Plane(out, rounded(out.dot(near) + away));
        ToolPlane.Role role = ROLES.get(random.nextInt(ROLES.size()));
        planes.add(new ToolPlane(plane, snap, role));
      }
      return ConvexTool.of(planes, near, 2 * size);
    }

    /** Round distances lie in faces and vertices of a part with round numbers. */
    private double rounded(double offset) {
      return random.nextBoolean() ? Math.rint(offset) : offset;
    }

    private Vec3 direction() {
      Vec3 any =
          random.nextBoolean()
              ? new Vec3(random.nextInt(3) - 1, random.nextInt(3) - 1, random.nextInt(3) - 1)
              : new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian());
      return any.norm() > 0 ? any.unit() : Vec3.Z;
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void theFileComesOutSoundOrAsItWas(long seed) throws IOException {
    byte[] in = Files.readAllBytes(Path.of("fixtures/bore/through-d8.3mf"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    FileResult result =
        new Gable(List.of(new Chance(seed)))
            .reshape(new ByteArrayInputStream(in), out, Settings.usual());

    assertThat(result).isNotInstanceOf(FileResult.Rejected.class);
    Input written = Input.stream("out", new ByteArrayInputStream(out.toByteArray()));
    assertThat(Gable.validate(written).validation().verdict()).isEqualTo(Verdict.PASS);
    if (result instanceof FileResult.Unchanged) {
      assertThat(out.toByteArray()).isEqualTo(in);
    }
  }

  @Test
  void chanceFindsBodiesThatCanBeMadeAndSuchThatCannot() {
    Set<String> outcomes = new HashSet<>();
    for (long seed = 1; seed <= 20; seed++) {
      Input input = Input.file(Path.of("fixtures/bore/through-d8.3mf"));
      Gable gable = new Gable(List.of(new Chance(seed)));
      FileResult result = gable.inspect(input, Settings.usual(), Observer.NONE);
      outcomes.add(result.getClass().getSimpleName());
    }
    assertThat(outcomes).containsExactlyInAnyOrder("Changed", "Unchanged");
  }
}
