package org.lifeline.design.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;

/** Pulls across the line against statics in space by {@link BarChain}. */
class SidePullTest {
    private static final int BARS = 8;

    private static Lifeline line(double massPerLength, double rise, double turn) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(massPerLength)
                        .axialStiffness(3.3e6)
                        .build())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .intermediateAnchor("b", Point.of(10, 0, 12.4 + rise), Passage.free())
                .endAnchor("c", Point.of(10 + 8 * Math.cos(turn), 8 * Math.sin(turn), 12.4 + rise))
                .pretension(1200)
                .build();
    }

    private static ArrestResult arrest(Lifeline line, Attachment attachment, Place place) {
        return EnergyBalance.withDefaults()
                .solve(
                        line,
                        Fall.builder("f")
                                .at(place)
                                .faller(Designs.worker("A", attachment))
                                .freeFall(1.2)
                                .build());
    }

    /** The loaded span in space with the pull leaning: forces on its two supports. */
    private static Vector3[] inSpace(ArrestResult r, double angle) {
        SpanState span = r.peak().span(r.span());
        List<CablePiece> pieces = span.pieces();
        Vector3 run = span.secondSupport().minus(span.firstSupport());
        Vector3 left = new Vector3(-run.y(), run.x(), 0).times(1 / run.horizontal());
        double p = r.lineLoad();
        Vector3 pull = left.times(p * Math.sin(angle)).plus(new Vector3(0, 0, -p * Math.cos(angle)));
        double w = r.line().weightPerLength();
        return new BarChain(
                        new double[] {r.line().cable().elongation().initialStiffness(), w},
                        new Point[] {span.firstSupport(), span.secondSupport(), r.attachmentAtPeak()},
                        new double[] {
                            pieces.get(0).unstretchedLength(), pieces.get(1).unstretchedLength()
                        },
                        pull,
                        BARS)
                .reactions();
    }

    private static Vector3[] turned(ArrestResult r, double angle) {
        int first = r.span() - 1;
        List<Vector3> forces = SidePull.forces(r, angle);
        Vector3[] before = {
            r.peak().span(r.span()).pieces().get(0).startTension(),
            r.peak().span(r.span()).pieces().get(1).endTension().times(-1)
        };
        Vector3[] now = new Vector3[2];
        for (int i = 0; i < 2; i++) {
            Vector3 change =
                    forces.get(first + i).minus(r.supports().get(first + i).vector());
            now[i] = before[i].plus(change);
        }
        return now;
    }

    /** A nearly weightless cable: turning about the chord is exact on a level span, wherever the load hangs. */
    @ParameterizedTest
    @CsvSource({"1, 5, 15", "1, 2.5, 15", "1, 5, -30", "2, 3, 15", "2, 4, 60"})
    void aLightCableTurnsAboutItsChord(int span, double station, double degrees) {
        for (Attachment each : Attachment.values()) {
            ArrestResult r = arrest(line(1e-6, 0, Math.toRadians(40)), each, Place.of(span, station));
            double angle = Math.toRadians(degrees);
            Vector3[] expected = inSpace(r, angle);
            Vector3[] found = turned(r, angle);
            for (int i = 0; i < 2; i++) {
                // 12 N/m · 1e-6 of weight and Newton's rest of 1e-7 N: 1e-6 of 10 kN is far above both.
                assertThat(found[i].minus(expected[i]).magnitude())
                        .as("%s, support %d: %s against %s", each, i, found[i], expected[i])
                        .isLessThan(1e-2);
            }
        }
    }

    /** With its own weight the cable is off by no more than the weight of the span turned by the angle. */
    @ParameterizedTest
    @CsvSource({"1, 5, 15", "1, 2.5, 15", "2, 3, -15"})
    void theWeightOfTheCableIsTheError(int span, double station, double degrees) {
        ArrestResult r = arrest(line(0.576, 0, 0.3), Attachment.GRIPPED, Place.of(span, station));
        double angle = Math.toRadians(degrees);
        Vector3[] expected = inSpace(r, angle);
        Vector3[] found = turned(r, angle);
        double weight = r.line().weightPerLength() * r.line().run(span);
        double off = 0;
        for (int i = 0; i < 2; i++) {
            off = Math.max(off, found[i].minus(expected[i]).magnitude());
        }
        // The weight turned by ψ moves by 2 W sin(ψ/2); shallow legs carry it several times over, as they carry the
        // pull.
        double legs = r.maximumTension() / r.lineLoad();
        assertThat(off).isLessThan(2 * legs * weight * Math.abs(Math.sin(angle / 2)) + 0.01 * weight);
        Vector3 across = new Vector3(-Math.sin(0.3), Math.cos(0.3), 0).times(span == 2 ? 1 : 0);
        Vector3 left = span == 1 ? new Vector3(0, 1, 0) : across;
        for (int i = 0; i < 2; i++) {
            assertThat(Math.abs(found[i].dot(left)))
                    .as("on the safe side across the line")
                    .isGreaterThanOrEqualTo(Math.abs(expected[i].dot(left)));
        }
    }

    /** On a sloping span the pull leans by the angle across, and differs along the line by the stated component. */
    @Test
    void aSlopingSpanGetsTheStatedComponentAlongTheLine() {
        ArrestResult r = arrest(line(1e-6, 1.5, 0), Attachment.GRIPPED, Place.of(1, 5));
        double angle = Math.toRadians(15);
        Vector3 sum = Vector3.ZERO;
        for (Vector3 each : turned(r, angle)) {
            sum = sum.plus(each);
        }
        double p = r.lineLoad();
        double beta = Math.atan2(1.5, 10);
        double psi = Math.asin(Math.sin(angle) / Math.cos(beta));
        assertThat(sum.y()).isEqualTo(p * Math.sin(angle), within(1e-3));
        assertThat(Math.abs(sum.x()))
                .isEqualTo(p * Math.sin(beta) * Math.cos(beta) * (1 - Math.cos(psi)), within(1e-3));
    }

    /** A fall at a support pulls on it and on nothing else. */
    @Test
    void aPullAtASupportGoesIntoIt() {
        ArrestResult r = arrest(line(0.576, 0, 0), Attachment.GRIPPED, Place.atSupport("b"));
        double angle = Math.toRadians(15);
        List<Vector3> found = SidePull.forces(r, angle);
        Vector3 change = found.get(1).minus(r.supports().get(1).vector());
        assertThat(change.y()).isEqualTo(r.lineLoad() * Math.sin(angle), within(1e-9));
        assertThat(change.z()).isEqualTo(r.lineLoad() * (1 - Math.cos(angle)), within(1e-9));
        assertThat(found.get(0)).isEqualTo(r.supports().get(0).vector());
    }

    /** On a line that runs aslant, a pull at its post leans across the line, to the left for a positive angle. */
    @Test
    void aPullAtASupportOfAnAslantLineGoesAcrossIt() {
        double turn = Math.toRadians(35);
        Lifeline aslant = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(3.3e6).build())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .intermediateAnchor("b", Point.of(10 * Math.cos(turn), 10 * Math.sin(turn), 12.4), Passage.free())
                .endAnchor("c", Point.of(18 * Math.cos(turn), 18 * Math.sin(turn), 12.4))
                .pretension(1200)
                .build();
        ArrestResult r = arrest(aslant, Attachment.GRIPPED, Place.atSupport("b"));
        Vector3 along = new Vector3(Math.cos(turn), Math.sin(turn), 0);
        Vector3 left = new Vector3(-Math.sin(turn), Math.cos(turn), 0);
        for (double angle : new double[] {Math.toRadians(15), Math.toRadians(-40)}) {
            Vector3 change =
                    SidePull.forces(r, angle).get(1).minus(r.supports().get(1).vector());
            assertThat(change.dot(left)).isEqualTo(r.lineLoad() * Math.sin(angle), within(1e-8));
            assertThat(change.dot(along)).isEqualTo(0, within(1e-8));
        }
    }

    /**
     * In time the tension peaks later than the line is lowest, or earlier: the forces of the lowest point are turned, and
     * taken as many times as the peak is larger. On a level span a turn by φ moves a force by 2 sin(φ/2) of its part across
     * the chord.
     */
    @Test
    void inTimeTheTurnGrowsWithThePeakOfTheTension() {
        Lifeline single = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(3.3e6).build())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .endAnchor("c", Point.of(8, 0, 12.4))
                .pretension(1200)
                .build();
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 3))
                .faller(Designs.worker("A", Attachment.GRIPPED))
                .build();
        double angle = Math.toRadians(20);
        for (ArrestResult r : List.of(
                EnergyBalance.withDefaults().solve(single, fall),
                TransientArrest.withDefaults().solve(single, fall).arrest())) {
            SpanState span = r.peak().span(1);
            double ratio = Math.max(1, r.maximumTension() / span.maximumTension());
            Vector3[] ends = {
                span.pieces().get(0).startTension(),
                span.pieces().get(span.pieces().size() - 1).endTension()
            };
            for (int i = 0; i < 2; i++) {
                double moved = SidePull.forces(r, angle)
                        .get(i)
                        .minus(r.supports().get(i).vector())
                        .magnitude();
                double expected = 2 * Math.sin(angle / 2) * Math.abs(ends[i].z()) * ratio;
                assertThat(moved).as(r.method().name()).isEqualTo(expected, within(1e-6 * expected));
            }
        }
    }
}
