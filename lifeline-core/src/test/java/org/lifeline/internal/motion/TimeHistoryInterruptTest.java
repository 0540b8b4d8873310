package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** On a line of thousands of supports the room for the histories alone takes a second: an interrupt ends it within. */
class TimeHistoryInterruptTest {
    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    @Test
    void anInterruptComesBeforeTheRoomForAllSamples() {
        Thread.currentThread().interrupt();
        // Room for a million supports and a million samples would be some terabytes: none of it is taken.
        assertThatThrownBy(() -> new TimeHistory(1000, 1e-3, 1, 1_000_000)).isInstanceOf(CancellationException.class);
        assertThat(Thread.interrupted()).as("the flag stays set").isTrue();
    }

    @Test
    void withoutAnInterruptThereIsRoom() {
        TimeHistory history = new TimeHistory(1, 0.1, 1, 2);
        assertThat(history.due(0)).isTrue();
        assertThat(history.samples()).isZero();
        assertThat(history.support(1, 8)).isEmpty();
    }
}
