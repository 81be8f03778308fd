package gable.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Memory and time of jobs. What is expected is decided by this project. */
class LimitedTest {

  private static final long MEGABYTE = 1 << 20;
  private static final Duration LONG = Duration.ofMinutes(1);

  @Test
  void jobsTogetherNeverTakeMoreMemoryThanThereIs() throws Exception {
    Limited limited = new Limited(100 * MEGABYTE, LONG, () -> false);
    AtomicLong taken = new AtomicLong();
    AtomicLong most = new AtomicLong();
    ExecutorService pool = Executors.newFixedThreadPool(6);
    List<Future<?>> jobs = new ArrayList<>();
    for (int job = 0; job < 60; job++) {
      long need = (1 + job * 37 % 70) * MEGABYTE;
      jobs.add(
          pool.submit(
              () ->
                  limited.run(
                      need,
                      told -> {
                        long now = taken.addAndGet(need);
                        most.accumulateAndGet(now, Math::max);
                        Thread.sleep(1);
                        return taken.addAndGet(-need);
                      })));
    }
    for (Future<?> job : jobs) {
      job.get(1, TimeUnit.MINUTES);
    }
    pool.shutdown();

    assertThat(most.get()).isPositive().isLessThanOrEqualTo(100 * MEGABYTE);
  }

  @Test
  void aJobThatNeedsMoreThanThereIsRunsAlone() throws Exception {
    Limited limited = new Limited(MEGABYTE, LONG, () -> false);

    String answer = limited.run(500 * MEGABYTE, told -> "done");

    assertThat(answer).isEqualTo("done");
  }

  @Test
  void aJobOutOfTimeIsToldToStop() {
    Limited limited = new Limited(MEGABYTE, Duration.ofMillis(50), () -> false);
    CountDownLatch listened = new CountDownLatch(1);

    assertThatThrownBy(
            () ->
                limited.run(
                    1,
                    told -> {
                      while (!told.getAsBoolean()) {
                        Thread.sleep(1);
                      }
                      listened.countDown();
                      return "too late";
                    }))
        .isInstanceOf(TimeoutException.class);
    assertThat(listened.getCount()).isZero();
  }

  @Test
  void aStopOfTheRunEndsAJob() {
    AtomicBoolean stop = new AtomicBoolean(true);
    Limited limited = new Limited(MEGABYTE, LONG, stop::get);

    assertThatThrownBy(
            () ->
                limited.run(
                    1,
                    told -> {
                      while (!told.getAsBoolean()) {
                        Thread.sleep(1);
                      }
                      return "stopped";
                    }))
        .isInstanceOf(CancellationException.class);
  }
}
