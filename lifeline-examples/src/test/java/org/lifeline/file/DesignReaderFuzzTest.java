package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.examples.TestFiles;

/** Whatever the bytes, the reader gives a design or says what is wrong; nothing else ever comes out. */
class DesignReaderFuzzTest {
    private static final String[] PIECES = {
        "\"", "{", "}", "[", "]", ",", ":", "null", "-", "1e9", "\\u0000", "\\ud800", "NaN", " m", "kN", "\n", "\"id\"",
        "0"
    };

    @Test
    void damagedFilesAreReadOrRefused() {
        long seed = Long.getLong("lifeline.seed", 4L);
        int rounds = Boolean.getBoolean("lifeline.long") ? 100_000 : 5_000;
        SplittableRandom random = new SplittableRandom(seed);
        byte[] original = TestFiles.bytes("designs/every-alternative.json");
        int read = 0;
        for (int i = 0; i < rounds; i++) {
            byte[] bytes = damage(original, random);
            try {
                TestFiles.read(bytes);
                read++;
            } catch (InvalidInputException e) {
                assertThat(e.violations()).isNotEmpty();
            } catch (RuntimeException | StackOverflowError e) {
                fail("seed " + seed + ", round " + i, e);
            }
        }
        assertThat(read).isLessThan(rounds / 2);
    }

    private static byte[] damage(byte[] original, SplittableRandom random) {
        byte[] bytes = original.clone();
        for (int k = random.nextInt(3); k >= 0; k--) {
            int at = random.nextInt(bytes.length);
            switch (random.nextInt(4)) {
                case 0 -> bytes[at] = (byte) random.nextInt(256);
                case 1 -> {
                    byte[] piece =
                            PIECES[random.nextInt(PIECES.length)].getBytes(java.nio.charset.StandardCharsets.UTF_8);
                    byte[] longer = new byte[bytes.length + piece.length];
                    System.arraycopy(bytes, 0, longer, 0, at);
                    System.arraycopy(piece, 0, longer, at, piece.length);
                    System.arraycopy(bytes, at, longer, at + piece.length, bytes.length - at);
                    bytes = longer;
                }
                case 2 -> bytes = java.util.Arrays.copyOf(bytes, Math.max(1, at));
                default -> {
                    int to = Math.min(bytes.length, at + 1 + random.nextInt(30));
                    byte[] shorter = new byte[bytes.length - (to - at)];
                    System.arraycopy(bytes, 0, shorter, 0, at);
                    System.arraycopy(bytes, to, shorter, at, bytes.length - to);
                    bytes = shorter.length == 0 ? new byte[] {' '} : shorter;
                }
            }
        }
        return bytes;
    }
}
