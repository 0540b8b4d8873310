package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** One weightless span under a load, against two straight legs. */
class StraightLegsTest {
    /** A law of one piece; given as a curve, so that it holds at any strain. */
    private static LoadElongation law(double stiffness) {
        return LoadElongation.curve(List.of(new LoadElongation.Corner(0, 0), new LoadElongation.Corner(1, stiffness)));
    }

    private static Lifeline line(double run, double rise, double length, double stiffness) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(0)
                        .elongation(law(stiffness))
                        .build())
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(run, 0, 8 + rise))
                .installed(Installed.unstretchedLength(length))
                .build();
    }

    private static void compare(LineEquilibrium e, StraightLegs.Shape s, double force) {
        LoadPosition at = e.loads().get(0);
        assertThat(at.point().x()).isCloseTo(s.x(), within(1e-9 * s.x()));
        assertThat(8 - at.point().z()).isCloseTo(s.drop(), within(1e-9 * (s.x() + Math.abs(s.drop()))));
        assertThat(e.firstTension()).isCloseTo(s.firstTension(), within(1e-9 * s.firstTension()));
        assertThat(e.lastTension()).isCloseTo(s.lastTension(), within(1e-9 * s.lastTension()));
        assertThat(at.force()).isEqualTo(force);
        Arrests.balances("straight legs", e);
    }

    @Test
    void freeRunning() {
        for (double stiffness : new double[] {1e4, 3e6, 1e9}) {
            for (double rise : new double[] {0, 2, -5}) {
                for (double force : new double[] {1, 900, 15_000}) {
                    double chord = Math.hypot(12, rise);
                    // Taut by 2 ‰.
                    double length = chord / 1.002;
                    Lifeline line = line(12, rise, length, stiffness);
                    LineEquilibrium e = Statics.withDefaults()
                            .solve(line, List.of(new AppliedLoad(Place.of(1, 3), Attachment.FREE_RUNNING, force)));
                    StraightLegs legs = new StraightLegs(12, rise, length, stiffness);
                    double slope = force / (2 * stiffness * 0.002);
                    if (slope > 1.05 * Math.abs(rise) / 12) {
                        compare(e, legs.running(force), force);
                    } else if (slope < 0.9 * Math.abs(rise) / 12) {
                        // Too light to hang between the supports on a chord that climbs: it rests on the lower one.
                        assertThat(e.loads().get(0).restsOn()).hasValue(rise > 0 ? "a" : "b");
                    }
                }
            }
        }
    }

    @Test
    void gripped() {
        for (double stiffness : new double[] {1e4, 3e6, 1e9}) {
            for (double rise : new double[] {0, 2, -5}) {
                for (double force : new double[] {1, 900, 15_000}) {
                    for (double share : new double[] {0.5, 0.2, 0.9}) {
                        double length = Math.hypot(12, rise) / 1.002;
                        Lifeline line = line(12, rise, length, stiffness);
                        LineEquilibrium e = Statics.withDefaults()
                                .solve(
                                        line,
                                        List.of(new AppliedLoad(Place.of(1, 12 * share), Attachment.GRIPPED, force)));
                        compare(e, new StraightLegs(12, rise, length, stiffness).gripped(force, share), force);
                    }
                }
            }
        }
    }

    @Test
    void aSlackCableOfNextToNoWeight() {
        // No weight, which is computed as next to none, no stretch: two legs of 2 % more than the chord, H = P L/(4 f),
        // f = √(S² − L²)/2.
        for (double slack : new double[] {0.001, 0.02, 0.3}) {
            Lifeline line = Lifeline.builder()
                    .cable(Cable.builder()
                            .weightPerLength(0)
                            .elongation(law(1e16))
                            .build())
                    .endAnchor("a", Point.of(0, 0, 8))
                    .endAnchor("b", Point.of(10, 0, 8))
                    .installed(Installed.unstretchedLength(10 * (1 + slack)))
                    .build();
            for (Attachment each : Attachment.values()) {
                LineEquilibrium e =
                        Statics.withDefaults().solve(line, List.of(new AppliedLoad(Place.of(1, 5), each, 6000)));
                double f = 5 * Math.sqrt((1 + slack) * (1 + slack) - 1);
                assertThat(8 - e.loads().get(0).point().z()).isCloseTo(f, within(1e-8));
                assertThat(e.span(1).horizontalTension()).isCloseTo(6000 * 10 / (4 * f), within(1e-8 * 6000 / f));
                assertThat(e.firstTension()).isCloseTo(3000 / f * 5 * (1 + slack), within(1e-8 * 6000 / f));
            }
        }
    }

    @Test
    void nearlyRigidCable() {
        // Inextensible: the taut cable cannot go down; the drop is P L/(4 T) with T from T³ ≈ EA P²/8 (V of small
        // angle).
        double stiffness = 1e12;
        Lifeline line = line(10, 0, 10, stiffness * 1).withInstalled(Installed.pretension(1));
        LineEquilibrium e =
                Statics.withDefaults().solve(line, List.of(new AppliedLoad(Place.of(1, 5), Attachment.GRIPPED, 1000)));
        double tension = Math.cbrt(stiffness * 1000.0 * 1000 / 8);
        assertThat(e.firstTension()).isCloseTo(tension, within(2e-6 * tension));
        assertThat(8 - e.loads().get(0).point().z()).isCloseTo(1000 * 10 / (4 * tension), within(1e-8));
    }

    @Test
    void verySoftCable() {
        // A rubber band: strain of 1000 % and more.
        double length = 1;
        Lifeline line = line(10, 0, length, 100);
        LineEquilibrium e = Statics.withDefaults()
                .solve(line, List.of(new AppliedLoad(Place.of(1, 5), Attachment.FREE_RUNNING, 5000)));
        compare(e, new StraightLegs(10, 0, length, 100).running(5000), 5000);
    }
}
