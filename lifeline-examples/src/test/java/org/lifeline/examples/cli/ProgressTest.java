package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ProgressTest {

    @Test
    void saysNothingInTheFirstSecondAndThenOnceASecond() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        AtomicLong now = new AtomicLong(Long.MAX_VALUE - 500_000_000L);
        Progress progress = new Progress(new PrintStream(bytes, true, StandardCharsets.UTF_8), now::get);
        progress.next("a", 0, 9);
        now.addAndGet(999_000_000L);
        progress.next("b", 1, 9);
        assertThat(bytes.size()).isZero();
        now.addAndGet(2_000_000L);
        progress.next("c\u001b", 2, 9);
        progress.next("d", 3, 9);
        now.addAndGet(1_100_000_000L);
        progress.next("e", 4, 9);
        assertThat(bytes.toString(StandardCharsets.UTF_8).lines())
                .containsExactly("computing: 2 of 9 done, now c\\u001B", "computing: 4 of 9 done, now e");
    }
}
