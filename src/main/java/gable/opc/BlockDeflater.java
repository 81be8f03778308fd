package gable.opc;

import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Deflates a part in blocks that do not wait for each other. Each block starts from the 32 KiB
 * before it as its dictionary and ends, but for the last, on a byte boundary (an empty stored
 * block, RFC 1951 3.2.4); one behind the other they are a single valid Deflate stream.
 *
 * <p>The blocks do not depend on who does them, so the result is the same for any number of
 * threads. Cost beside one stream: some 5 bytes and a dictionary for each MiB.
 */
final class BlockDeflater {

  /** Long against the dictionary and the flush, short enough to keep several threads busy. */
  private static final int BLOCK = 1 << 20;

  /** How far back Deflate can refer (RFC 1951 2). */
  private static final int WINDOW = 1 << 15;

  private final PartContent content;
  private final int level;
  private final int blocks;
  private final AtomicReferenceArray<byte[]> results;
  private final CRC32 sum = new CRC32();
  private final AtomicInteger nextJob = new AtomicInteger();
  private final CountDownLatch open;
  private final AtomicReference<Throwable> failure = new AtomicReference<>();

  private BlockDeflater(PartContent content, int level) {
    this.content = content;
    this.level = level;
    this.blocks = Math.toIntExact(Math.max(1, (content.size() + BLOCK - 1) / BLOCK));
    this.results = new AtomicReferenceArray<>(blocks);
    this.open = new CountDownLatch(blocks + 1);
  }

  /** Deflates the content at the level of the compression. */
  static Packed deflate(PartContent content, Compression compression) {
    return deflate(content, compression.level(), compression);
  }

  /** Deflates the content at a level. */
  static Packed deflate(PartContent content, int level, Compression compression) {
    BlockDeflater work = new BlockDeflater(content, level);
    int helpers = Math.min(compression.threads() - 1, work.blocks);
    for (int i = 0; i < helpers; i++) {
      try {
        compression.workers().execute(work::run);
      } catch (RejectedExecutionException e) {
        break; // nobody is free: the calling thread does it all
      }
    }
    work.run();
    return work.finish();
  }

  /** The bytes as they are, with their sum. */
  static Packed store(PartContent content) {
    CRC32 sum = new CRC32();
    addTo(sum, content);
    return new Packed(content, content.size(), sum.getValue());
  }

  /**
   * Takes jobs until none is left: the sum first, then the blocks in order. A job that was taken is
   * being done by somebody, so waiting for the open ones cannot last for ever.
   */
  private void run() {
    Worker worker = new Worker();
    try {
      for (int job = nextJob.getAndIncrement(); job <= blocks; job = nextJob.getAndIncrement()) {
        try {
          if (job == 0) {
            addTo(sum, content);
          } else {
            results.set(job - 1, worker.deflate(job - 1));
          }
        } catch (RuntimeException | Error e) {
          failure.compareAndSet(null, e);
        } finally {
          open.countDown();
        }
      }
    } finally {
      worker.deflater.end();
    }
  }

  private Packed finish() {
    boolean interrupted = false;
    while (open.getCount() > 0) {
      try {
        open.await();
      } catch (InterruptedException e) {
        interrupted = true; // the jobs are short; the caller learns of it below
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    Throwable thrown = failure.get();
    if (thrown != null) {
      throw new IllegalStateException("deflating failed", thrown);
    }
    PartContent.Builder packed = new PartContent.Builder();
    for (int i = 0; i < blocks; i++) {
      packed.add(results.get(i));
    }
    return new Packed(packed.build(), content.size(), sum.getValue());
  }

  private static void addTo(CRC32 sum, PartContent content) {
    byte[] chunk = new byte[(int) Math.min(BLOCK, content.size())];
    for (long at = 0; at < content.size(); at += chunk.length) {
      int count = (int) Math.min(chunk.length, content.size() - at);
      content.copy(at, count, chunk, 0);
      sum.update(chunk, 0, count);
    }
  }

  /** The tools of one thread. */
  private final class Worker {

    final Deflater deflater = new Deflater(level, true);
    private final byte[] input = new byte[(int) Math.min(WINDOW + BLOCK, content.size())];
    private byte[] output = new byte[BLOCK / 4];

    byte[] deflate(int block) {
      long from = (long) block * BLOCK;
      int before = (int) Math.min(WINDOW, from);
      int length = (int) Math.min(BLOCK, content.size() - from);
      content.copy(from - before, before + length, input, 0);
      deflater.reset();
      if (before > 0) {
        deflater.setDictionary(input, 0, before);
      }
      deflater.setInput(input, before, length);
      boolean last = block == blocks - 1;
      if (last) {
        deflater.finish();
      }
      int count = drain(last); // may put a longer array in the place of output
      return Arrays.copyOf(output, count);
    }

    /** Deflates what was set; returns how many bytes of {@code output} it took. */
    private int drain(boolean last) {
      int flush = last ? Deflater.NO_FLUSH : Deflater.SYNC_FLUSH;
      int count = 0;
      while (true) {
        int room = output.length - count;
        int got = deflater.deflate(output, count, room, flush);
        count += got;
        if (got < room) { // room left means that nothing is held back
          return count;
        }
        output = Arrays.copyOf(output, 2 * output.length);
      }
    }
  }
}
