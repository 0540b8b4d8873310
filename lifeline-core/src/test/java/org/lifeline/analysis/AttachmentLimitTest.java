package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.FreeRunningWorker;
import org.lifeline.verify.Verifier;

/** A free-running attachment at its two limits; decision 32. */
class AttachmentLimitTest {
    private static final Lifeline LINE = Lifeline.builder()
            .cable(Cable.builder().weightPerLength(4.2).axialStiffness(4.9e6).build())
            .endAnchor("a", Point.of(0, 0, 6))
            .intermediateAnchor("post", Point.of(12, 0, 6), Passage.friction(0.12))
            .intermediateAnchor("post 2", Point.of(24, 0, 6), Passage.friction(0.12))
            .endAnchor("b", Point.of(36, 0, 6))
            .pretension(1500)
            .build();

    private static Fall fall(Attachment attachment, Place place) {
        return Fall.builder("f")
                .at(place)
                .faller(FreeRunningWorker.lanyardOfSixKilonewtons().toBuilder("w")
                        .attachment(attachment)
                        .build())
                .build();
    }

    /** The finding: running, the load on the post is the same 3.0 kN wherever the fall starts. */
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 1, 3, 6})
    void theConnectorThatRunsHidesTheLoadOnThePost(double station) {
        AttachmentLimits both =
                EnergyBalance.withDefaults().solveLimits(LINE, fall(Attachment.FREE_RUNNING, Place.of(2, station)));

        assertThat(both.at(AttachmentLimit.RUNNING).anchorLoad("post")).isCloseTo(3030, within(60.0));
        AttachmentLimits.Governing post = both.anchorLoad("post");
        if (station < 3) {
            assertThat(post.limit()).isEqualTo(AttachmentLimit.HELD);
            assertThat(post.value()).isGreaterThan(5000);
        }
        assertThat(post.value())
                .isEqualTo(Math.max(
                        both.at(AttachmentLimit.RUNNING).anchorLoad("post"),
                        both.at(AttachmentLimit.HELD).anchorLoad("post")));
        assertThat(post.arrest()).isSameAs(both.at(post.limit()));
        for (AttachmentLimit each : AttachmentLimit.values()) {
            assertThat(both.at(each).attachmentLimit()).contains(each);
            assertThat(Verifier.withDefaults().arrest(both.at(each)).failures()).isEmpty();
        }
    }

    @Test
    void heldIsTheArrestOfOneWhoGrips() {
        ArrestResult held = EnergyBalance.withDefaults()
                .withAttachmentLimit(AttachmentLimit.HELD)
                .solve(LINE, fall(Attachment.FREE_RUNNING, Place.of(2, 1)));
        ArrestResult grips = EnergyBalance.withDefaults().solve(LINE, fall(Attachment.GRIPPED, Place.of(2, 1)));

        assertThat(held.attachment()).isEqualTo(Attachment.GRIPPED);
        assertThat(held.fall().fallers().get(0).attachment()).isEqualTo(Attachment.FREE_RUNNING);
        assertThat(held.lineLoad()).isEqualTo(grips.lineLoad());
        assertThat(held.anchorLoad("post")).isEqualTo(grips.anchorLoad("post"));
        assertThat(held.explain()).anyMatch(s -> s.section().endsWith("the attachment held"));
    }

    @Test
    void eachQuantityHasItsOwnLimit() {
        AttachmentLimits both =
                EnergyBalance.withDefaults().solveLimits(LINE, fall(Attachment.FREE_RUNNING, Place.of(1, 1.5)));

        assertThat(both.totalFallDistance().limit()).isEqualTo(AttachmentLimit.RUNNING);
        assertThat(both.requiredBelowLine().limit()).isEqualTo(AttachmentLimit.RUNNING);
        assertThat(both.anchorLoad("a").value())
                .isEqualTo(both.anchorLoad("a").arrest().anchorLoad("a"));
        assertThat(both.maximumTension().value())
                .isEqualTo(both.maximumTension().arrest().maximumTension());
        assertThat(both.arrestForce().value()).isCloseTo(6000, within(1e-6));
    }

    @Test
    void whatCannotRunHasNoLimits() {
        for (Fall each : new Fall[] {
            fall(Attachment.GRIPPED, Place.of(2, 1)), fall(Attachment.FREE_RUNNING, Place.atSupport("post"))
        }) {
            AttachmentLimits both = EnergyBalance.withDefaults().solveLimits(LINE, each);
            assertThat(both.at(AttachmentLimit.HELD)).isSameAs(both.at(AttachmentLimit.RUNNING));
            assertThat(both.at(AttachmentLimit.HELD).attachmentLimit()).isEmpty();
        }
    }

    @Test
    @SuppressWarnings("NullAway")
    void nullIsNoLimit() {
        assertThatThrownBy(() -> EnergyBalance.withDefaults().withAttachmentLimit(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("attachmentLimit");
    }
}
