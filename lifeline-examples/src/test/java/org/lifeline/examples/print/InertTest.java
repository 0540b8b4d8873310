package org.lifeline.examples.print;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class InertTest {

    @Test
    void ordinaryTextStaysAsItIs() {
        assertThat(Inert.of("Bühne 3, Δ = 5 mm² → 屋根 🙂")).isEqualTo("Bühne 3, Δ = 5 mm² → 屋根 🙂");
    }

    @Test
    void controlsAndMarksOfDirectionBecomeVisible() {
        assertThat(Inert.of("a\u001b[0m\u0000\u007f\u0085\u009b\n\t\u2028"))
                .isEqualTo("a\\u001B[0m\\u0000\\u007F\\u0085\\u009B\\u000A\\u0009\\u2028");
        assertThat(Inert.of("\u202e\u2066\u200f\u061c\u200b\ufeff\ue000"))
                .isEqualTo("\\u202E\\u2066\\u200F\\u061C\\u200B\\uFEFF\\uE000");
        assertThat(Inert.of("lone \ud83d")).isEqualTo("lone \\uD83D");
    }

    @Test
    void longTextIsCut() {
        assertThat(Inert.of("x".repeat(10_000))).hasSize(201).endsWith("…");
    }
}
