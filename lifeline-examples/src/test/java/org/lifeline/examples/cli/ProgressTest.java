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
        assertThat(progress.progress(0, 9)).isTrue();
        now.addAndGet(999_000_000L);
        progress.progress(1, 9);
        assertThat(bytes.size()).isZero();
        now.addAndGet(2_000_000L);
        progress.progress(2, 9);
        progress.progress(3, 9);
        now.addAndGet(1_100_000_000L);
        progress.progress(4, 9);
        assertThat(bytes.toString(StandardCharsets.UTF_8).lines())
                .containsExactly("computing: 2 of 9 done", "computing: 4 of 9 done");
    }
}
