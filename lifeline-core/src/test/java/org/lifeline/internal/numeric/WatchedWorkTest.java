package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** When the listener of a long computation is asked, and what ends it. */
class WatchedWorkTest {
    private final List<String> heard = new ArrayList<>();

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    private WatchedWork work(long until) {
        return new WatchedWork(3, (done, total) -> {
            heard.add(done + " of " + total);
            return done < until;
        });
    }

    @Test
    void everyPartIsTold() {
        WatchedWork work = work(9);
        work.partDone();
        work.partDone();
        assertThat(heard).containsExactly("1 of 3", "2 of 3");
    }

    @Test
    void withinAPartTheListenerIsAskedByTheWorkDone() {
        WatchedWork work = work(9);
        work.goOn(49_999);
        assertThat(heard).isEmpty();
        work.goOn(1);
        assertThat(heard).containsExactly("0 of 3");
        work.goOn(49_999);
        assertThat(heard).as("counted anew").hasSize(1);
        work.goOn(2);
        assertThat(heard).hasSize(2);
    }

    @Test
    void aPartDoneStartsTheCountAnew() {
        WatchedWork work = work(9);
        work.goOn(40_000);
        work.partDone();
        work.goOn(40_000);
        assertThat(heard).containsExactly("1 of 3");
    }

    @Test
    void theListenerEndsTheWork() {
        WatchedWork work = work(1);
        work.goOn(60_000);
        assertThatThrownBy(work::partDone).isInstanceOf(CancellationException.class);
        assertThatThrownBy(() -> work.goOn(60_000)).isInstanceOf(CancellationException.class);
    }

    @Test
    void anInterruptEndsTheWorkAndItsFlagStaysSet() {
        WatchedWork work = work(9);
        Thread.currentThread().interrupt();
        assertThatThrownBy(() -> work.goOn(1)).isInstanceOf(CancellationException.class);
        assertThatThrownBy(work::partDone).isInstanceOf(CancellationException.class);
        assertThatThrownBy(() -> WatchedWork.alone().goOn(1)).isInstanceOf(CancellationException.class);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(heard).isEmpty();
    }

    @Test
    void workAloneGoesOnWithoutAListener() {
        WatchedWork alone = WatchedWork.alone();
        assertThatCode(() -> {
                    alone.goOn(1_000_000);
                    alone.partDone();
                })
                .doesNotThrowAnyException();
    }
}
