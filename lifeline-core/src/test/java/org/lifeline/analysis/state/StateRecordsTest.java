package org.lifeline.analysis.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Place;

/** What a state of the line is made of: sums, angles and refusals. */
class StateRecordsTest {
    private static final Place PLACE = Place.of(1, 3);

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, -5, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aLoadThatPullsUpOrIsNoNumberIsRefused(double force) {
        assertThatThrownBy(() -> new AppliedLoad(PLACE, Attachment.GRIPPED, force))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("force");
    }

    @Test
    void aLoadOfNothingIsALoad() {
        AppliedLoad load = new AppliedLoad(PLACE, Attachment.FREE_RUNNING, 0);
        assertThat(load.force()).isZero();
        assertThat(load.place()).isEqualTo(PLACE);
        assertThat(load.attachment()).isEqualTo(Attachment.FREE_RUNNING);
    }

    @Test
    @SuppressWarnings("NullAway")
    void aLoadWithoutPlaceOrAttachmentIsRefusedByName() {
        assertThatThrownBy(() -> new AppliedLoad(null, Attachment.GRIPPED, 1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("place");
        assertThatThrownBy(() -> new AppliedLoad(PLACE, null, 1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("attachment");
    }

    /** Each part has a power of two of its own, so that no sum can stand for another. */
    @Test
    void theLineTakesAllButTheConnection() {
        EnergyAccount e = new EnergyAccount(1000, 1, 2, 4, 8, 16, 32);
        assertThat(e.lineWork()).isEqualTo(1 + 2 + 8 + 16 + 32);
        assertThat(e.residual()).isEqualTo(1000 - 63);
    }

    @Test
    void anAccountThatClosesLeavesNothing() {
        for (long seed = 1; seed <= 50; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double[] p = r.doubles(6, -500, 3000).toArray();
            double sum = p[0] + p[1] + p[2] + p[3] + p[4] + p[5];
            EnergyAccount e = new EnergyAccount(sum, p[0], p[1], p[2], p[3], p[4], p[5]);
            assertThat(e.residual()).as("seed %d", seed).isCloseTo(0, within(1e-10));
            assertThat(e.lineWork() + e.connection()).as("seed %d", seed).isCloseTo(sum, within(1e-10));
        }
    }

    @ParameterizedTest
    @CsvSource({"0.3, false", "1e-300, false", "0, true", "-0.0, true", "-0.01, true"})
    void anAbsorberIsUsedUpWhereNothingIsLeft(double remaining, boolean bottomed) {
        assertThat(new InlineAbsorberState("s", 0.5, remaining).bottomedOut()).isEqualTo(bottomed);
    }

    @Test
    void theForceOnASupportIsTheLengthOfItsVector() {
        SupportReaction r = new SupportReaction("s", new Vector3(2, -3, 6), Vector3.ZERO, 0.1);
        assertThat(r.force()).isCloseTo(7, within(1e-12));
        assertThat(r.slip()).isEqualTo(0.1);
        assertThat(r.id()).isEqualTo("s");
    }

    @ParameterizedTest
    @CsvSource({
        "3, 4, 0, 0",
        "3, 4, -5, 45",
        "3, 4, 5, -45",
        "-3, -4, -5, 45",
        "0, 0, -2, 90",
        "0, 0, 2, -90",
        "0, 1, -1.7320508075688772, 60"
    })
    void theAngleCountsDownFromTheHorizontalWhereverTheForcePoints(double x, double y, double z, double degrees) {
        SupportReaction r = new SupportReaction("s", new Vector3(x, y, z), Vector3.ZERO, 0);
        assertThat(r.angleBelowHorizontal()).isCloseTo(Math.toRadians(degrees), within(1e-12));
    }

    @Test
    void forceAndAngleGiveTheVerticalPartBack() {
        for (long seed = 1; seed <= 50; seed++) {
            SplittableRandom s = new SplittableRandom(seed);
            Vector3 v = new Vector3(s.nextDouble(-9, 9), s.nextDouble(-9, 9), s.nextDouble(-9, 9));
            SupportReaction r = new SupportReaction("s", v, Vector3.ZERO, 0);
            assertThat(-r.force() * Math.sin(r.angleBelowHorizontal()))
                    .as("seed %d", seed)
                    .isCloseTo(v.z(), within(1e-12));
        }
    }

    @Test
    void limitsOfAnAttachmentAreNamed() {
        assertThat(AttachmentLimit.RUNNING.label()).isEqualTo("running");
        assertThat(AttachmentLimit.HELD.label()).isEqualTo("held");
    }

    @Test
    void aPositionSaysWhereTheLoadIsAndOnWhatItRests() {
        LoadPosition p = new LoadPosition(2, Point.of(1, 2, 3), 900, Optional.of("post"));
        assertThat(p.span()).isEqualTo(2);
        assertThat(p.point()).isEqualTo(Point.of(1, 2, 3));
        assertThat(p.force()).isEqualTo(900);
        assertThat(p.restsOn()).contains("post");
    }
}
