package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.Inflater;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The JDK's inflater says what a valid stream is, its CRC-32 what the sum is. */
class BlockDeflaterTest {

  private static final int MIB = 1 << 20;

  @ParameterizedTest(name = "{0} bytes")
  @ValueSource(ints = {0, 1, 32_768, MIB - 1, MIB, MIB + 1, 3 * MIB, 5 * MIB + 12_345})
  void givesOneStreamThatInflatesToTheSameBytes(int size) throws Exception {
    byte[] bytes = xml(size);
    Packed packed = BlockDeflater.deflate(PartContent.of(bytes), Compression.serial(6));
    assertThat(inflate(packed.bytes().toBytes(), size)).isEqualTo(bytes);
    CRC32 sum = new CRC32();
    sum.update(bytes);
    assertThat(packed.sum()).isEqualTo(sum.getValue());
    assertThat(packed.size()).isEqualTo(size);
  }

  @ParameterizedTest(name = "{0} threads")
  @ValueSource(ints = {2, 3, 8})
  void givesTheSameBytesWithAnyNumberOfThreads(int threads) {
    PartContent content = PartContent.of(xml(6 * MIB + 77));
    byte[] serial = BlockDeflater.deflate(content, Compression.serial(6)).bytes().toBytes();
    ExecutorService workers = Executors.newFixedThreadPool(threads);
    try {
      Compression parallel = new Compression(6, threads, workers);
      assertThat(BlockDeflater.deflate(content, parallel).bytes().toBytes()).isEqualTo(serial);
    } finally {
      workers.shutdownNow();
    }
  }

  @Test
  void doesTheWorkAloneWhenTheWorkersAreBusyOrRefuse() {
    PartContent content = PartContent.of(xml(3 * MIB));
    byte[] serial = BlockDeflater.deflate(content, Compression.serial(6)).bytes().toBytes();
    Compression busy = new Compression(6, 4, job -> {}); // takes jobs and never starts them
    Compression refusing =
        new Compression(
            6,
            4,
            job -> {
              throw new RejectedExecutionException();
            });
    assertThat(BlockDeflater.deflate(content, busy).bytes().toBytes()).isEqualTo(serial);
    assertThat(BlockDeflater.deflate(content, refusing).bytes().toBytes()).isEqualTo(serial);
  }

  @Test
  void takesBytesThatCannotBeMadeSmaller() throws Exception {
    byte[] noise = new byte[2 * MIB];
    new SplittableRandom(1).nextBytes(noise);
    Packed packed = BlockDeflater.deflate(PartContent.of(noise), Compression.serial(9));
    assertThat(inflate(packed.bytes().toBytes(), noise.length)).isEqualTo(noise);
  }

  /** Derived: the dictionary makes up for the cut, so what is lost is a flush for each block. */
  @Test
  void losesLittleAgainstOneStream() {
    byte[] bytes = xml(8 * MIB);
    Deflater deflater = new Deflater(6, true);
    deflater.setInput(bytes);
    deflater.finish();
    byte[] whole = new byte[bytes.length];
    int single = deflater.deflate(whole);
    deflater.end();
    Packed packed = BlockDeflater.deflate(PartContent.of(bytes), Compression.serial(6));
    assertThat(packed.bytes().size()).isLessThan(single + single / 100);
  }

  @Test
  void makesASmallerStreamAtAHigherLevel() {
    PartContent content = PartContent.of(xml(2 * MIB));
    long fast = BlockDeflater.deflate(content, Compression.serial(1)).bytes().size();
    long small = BlockDeflater.deflate(content, Compression.serial(9)).bytes().size();
    assertThat(small).isLessThan(fast);
  }

  /** Text like a vertex list. */
  private static byte[] xml(int size) {
    SplittableRandom random = new SplittableRandom(size);
    StringBuilder text = new StringBuilder(size + 80);
    while (text.length() < size) {
      text.append("<vertex x=\"").append(random.nextInt(100_000) / 1000.0);
      text.append("\" y=\"").append(random.nextInt(100_000) / 1000.0).append("\" z=\"0\"/>\n");
    }
    text.setLength(size);
    return text.toString().getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] inflate(byte[] packed, int size) throws Exception {
    Inflater inflater = new Inflater(true);
    inflater.setInput(packed);
    byte[] bytes = new byte[size];
    int count = 0;
    while (count < size) {
      int got = inflater.inflate(bytes, count, size - count);
      assertThat(got).as("stream ends early").isPositive();
      count += got;
    }
    assertThat(inflater.inflate(new byte[1])).isZero();
    assertThat(inflater.finished()).isTrue();
    assertThat(inflater.getRemaining()).isZero();
    inflater.end();
    return bytes;
  }
}
