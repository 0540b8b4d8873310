package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Refusal;
import org.lifeline.model.absorber.LoadingCurve;

/** Workers and falls. */
class PeopleAndFallsTest {
    private static final Connection ROPE = Connection.plainLanyard(1.5, LoadingCurve.spring(5e4));

    private static Worker worker(String id, Attachment attachment) {
        return Worker.builder(id)
                .mass(100)
                .walkingLevel(10)
                .attachment(attachment)
                .connection(ROPE)
                .build();
    }

    private static Worker worker(String id) {
        return worker(id, Attachment.FREE_RUNNING);
    }

    @Test
    void workers() {
        Worker w = Worker.builder("A")
                .mass(95)
                .walkingLevel(10.9)
                .attachmentHeight(1.4)
                .attachment(Attachment.GRIPPED)
                .connection(ROPE)
                .offset(0.7)
                .build();
        assertThat(w.id()).isEqualTo("A");
        assertThat(w.mass()).isEqualTo(95);
        assertThat(w.walkingLevel()).isEqualTo(10.9);
        assertThat(w.attachmentHeight()).isEqualTo(1.4);
        assertThat(w.harnessElevation()).isEqualTo(12.3);
        assertThat(w.attachment()).isEqualTo(Attachment.GRIPPED);
        assertThat(w.connection()).isSameAs(ROPE);
        assertThat(w.offset()).isEqualTo(0.7);
        assertThat(worker("B").attachmentHeight()).isEqualTo(1.5);
        assertThat(worker("B").attachment()).isEqualTo(Attachment.FREE_RUNNING);
        assertThat(worker("B").offset()).isZero();
    }

    @Test
    void refusedWorkers() {
        assertThat(Refusal.of(
                        () -> Worker.builder(" ").attachmentHeight(0).offset(-1).build()))
                .containsExactly(
                        "id: \" \": must not be blank",
                        "mass: missing: must be given",
                        "walkingLevel: missing: must be given",
                        "attachmentHeight: 0.0 m: must be a finite number above zero",
                        "offset: -1.0 m: must be a finite number that is not negative",
                        "connection: missing: must be given");
    }

    @Test
    void falls() {
        Fall f = Fall.builder("bay 2")
                .at(Place.of(2, 6))
                .faller(worker("A"))
                .faller(worker("B"))
                .hanging(worker("C"), Place.of(1, 3))
                .freeFall(1.2)
                .build();
        assertThat(f.id()).isEqualTo("bay 2");
        assertThat(f.place()).isEqualTo(Place.of(2, 6));
        assertThat(f.fallers()).extracting(Worker::id).containsExactly("A", "B");
        assertThat(f.hanging()).extracting(h -> h.worker().id()).containsExactly("C");
        assertThat(f.hanging().get(0).place()).isEqualTo(Place.of(1, 3));
        assertThat(f.freeFall()).hasValue(1.2);
        assertThat(f.fallingMass()).isEqualTo(200);
        assertThatThrownBy(() -> f.fallers().clear()).isInstanceOf(UnsupportedOperationException.class);
        Fall g = f.at(Place.of(1, 2));
        assertThat(g.place()).isEqualTo(Place.of(1, 2));
        assertThat(g.id()).isEqualTo("bay 2");
        assertThat(g.fallers()).isEqualTo(f.fallers());
        assertThat(g.hanging()).isEqualTo(f.hanging());
        assertThat(g.freeFall()).hasValue(1.2);
    }

    @Test
    void withoutAStatedFreeFall() {
        Fall f = Fall.builder("f").at(Place.of(1, 1)).faller(worker("A")).build();
        assertThat(f.freeFall()).isEmpty();
        assertThat(f.hanging()).isEmpty();
        Fall zero = Fall.builder("f")
                .at(Place.of(1, 1))
                .faller(worker("A"))
                .freeFall(0)
                .build();
        assertThat(zero.freeFall()).hasValue(0);
    }

    @Test
    void refusedFalls() {
        assertThat(Refusal.of(() -> Fall.builder("").freeFall(-0.1).build()))
                .containsExactly(
                        "id: \"\": must not be blank",
                        "faller: []: must name at least one worker",
                        "freeFall: -0.1 m: must be a finite number that is not negative",
                        "at: missing: must be given");
        assertThat(Refusal.of(() -> Fall.builder("f")
                        .at(Place.of(1, 1))
                        .faller(worker("A"))
                        .faller(worker("A"))
                        .faller(worker("G", Attachment.GRIPPED))
                        .hanging(worker("A"), Place.of(1, 1))
                        .hanging(worker("C"), Place.of(1, 1))
                        .hanging(worker("C"), Place.of(1, 2))
                        .build()))
                .containsExactly(
                        "faller[1]: A: must not be named twice in one fall",
                        "faller[2]: G: must be attached to the line in the same way as the others who fall at this"
                                + " place",
                        "hanging[0].worker: A: must not be named twice in one fall",
                        "hanging[2].worker: C: must not be named twice in one fall");
    }
}
