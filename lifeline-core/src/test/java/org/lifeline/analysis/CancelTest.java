package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** One long analysis of a line ends when its thread is interrupted or its listener wants no more; it has no result then. */
@Timeout(120)
class CancelTest {
    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    private static Lifeline line(int spans) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(5e6).build())
                .endAnchor("a", Point.of(0, 0, 10));
        for (int i = 1; i < spans; i++) {
            b.support(Support.intermediate("s" + i, Point.of(10 * i, 0, 10 + 0.3 * (i % 3)), Passage.friction(0.1)));
        }
        return b.endAnchor("z", Point.of(10 * spans, 0, 10)).pretension(1500).build();
    }

    private static Fall fall() {
        return Fall.builder("fall")
                .at(Place.of(1, 5))
                .faller(Worker.builder("A")
                        .mass(100)
                        .walkingLevel(8.5)
                        .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(5e4)))
                        .build())
                .build();
    }

    private static List<AppliedLoad> load(int span) {
        return List.of(new AppliedLoad(Place.of(span, 5), Attachment.FREE_RUNNING, 900));
    }

    @Test
    void anInterruptedThreadSolvesNothing() {
        Lifeline line = line(3);
        List<Runnable> analyses = List.of(
                () -> Statics.withDefaults().solve(line, load(2)),
                () -> Statics.withDefaults().attempt(line, load(2)),
                () -> EnergyBalance.withDefaults().solve(line, fall()),
                () -> EnergyBalance.withDefaults().attempt(line, fall()),
                () -> TransientArrest.withDefaults().solve(line, fall()),
                () -> TransientArrest.withDefaults().attempt(line, fall()));
        for (Runnable each : analyses) {
            Thread.currentThread().interrupt();
            assertThatThrownBy(each::run).isInstanceOf(CancellationException.class);
            assertThat(Thread.interrupted()).as("the flag stays set").isTrue();
        }
    }

    /** The interrupt comes within the work on the load of a line of a thousand spans, not before it. */
    @Test
    void anInterruptEndsALongLine() {
        List<Long> heard = new ArrayList<>();
        Statics statics = Statics.withDefaults().withProgress((done, total) -> {
            heard.add(done);
            // Installed line and temperature are done; the second time, the load is under way.
            if (heard.stream().filter(d -> d == 2).count() == 2) {
                Thread.currentThread().interrupt();
            }
            return true;
        });
        assertThatThrownBy(() -> statics.solve(line(1000), load(500))).isInstanceOf(CancellationException.class);
        assertThat(Thread.interrupted()).isTrue();
        assertThat(heard).endsWith(2L, 2L).doesNotContain(3L);
    }

    @Test
    void theListenerOfStaticsHearsEveryPartAndCanEndIt() {
        List<String> heard = new ArrayList<>();
        Statics statics = Statics.withDefaults().withProgress((done, total) -> heard.add(done + " of " + total));
        LineEquilibrium whole = statics.solve(line(3), load(2));
        assertThat(heard).containsExactly("1 of 3", "2 of 3", "3 of 3");
        assertThat(whole.maximumTension())
                .isEqualTo(Statics.withDefaults().solve(line(3), load(2)).maximumTension());
        assertThat(statics.withTemperature(20).fingerprint())
                .as("who listens does not change what is computed")
                .isEqualTo(Statics.withDefaults().withTemperature(20).fingerprint());

        heard.clear();
        Statics ended = statics.withProgress((done, total) -> done < 2).atInstalledTemperature();
        assertThatThrownBy(() -> ended.solve(line(3), load(2)))
                .isInstanceOf(CancellationException.class)
                .hasMessageContaining("listener");
        assertThat(Thread.interrupted()).isFalse();
    }

    @Test
    void theListenerOfAnArrestInTimeHearsEveryPartAndCanEndIt() {
        List<String> heard = new ArrayList<>();
        TransientArrest arrest = TransientArrest.withDefaults()
                .withProgress((done, total) -> heard.add(done + " of " + total))
                .withRefinements(0)
                .withDuration(0.8);
        arrest.solve(line(1), fall());
        assertThat(heard).containsExactly("1 of 3", "2 of 3", "3 of 3");
        for (int last = 1; last <= 3; last++) {
            int end = last;
            assertThatThrownBy(() -> arrest.withProgress((done, total) -> done < end)
                            .withTemperature(20)
                            .solve(line(1), fall()))
                    .isInstanceOf(CancellationException.class);
        }
    }
}
