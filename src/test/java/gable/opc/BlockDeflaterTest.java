package gable.opc;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Deflated blocks against the inflater of the JDK. */
class BlockDeflaterTest {

  /** A block that hardly shrinks needs more room than a worker starts with. */
  @ParameterizedTest
  @CsvSource({"256, 3500000", "10, 3500000", "256, 1048576", "2, 1048577", "256, 100"})
  void whatComesBackIsWhatWentIn(int symbols, int size) throws DataFormatException {
    byte[] bytes = new byte[size];
    Random random = new Random(7);
    for (int i = 0; i < size; i++) {
      bytes[i] = (byte) random.nextInt(symbols);
    }

    Packed packed = BlockDeflater.deflate(PartContent.of(bytes), Compression.serial(6));

    assertThat(inflated(packed.bytes().toBytes(), size)).isEqualTo(bytes);
  }

  private static byte[] inflated(byte[] deflated, int size) throws DataFormatException {
    Inflater inflater = new Inflater(true);
    inflater.setInput(deflated);
    byte[] bytes = new byte[size];
    int count = 0;
    while (!inflater.finished() && !inflater.needsInput() && count < size) {
      count += inflater.inflate(bytes, count, size - count);
    }
    inflater.end();
    assertThat(count).isEqualTo(size);
    return bytes;
  }
}
