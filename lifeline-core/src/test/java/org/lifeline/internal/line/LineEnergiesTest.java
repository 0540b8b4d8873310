package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/** Energies in closed form against quadrature along the pieces, on random states, which need not be in equilibrium. */
class LineEnergiesTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 300);

    /** Gauss points and weights on (0, 1), five points: M. Abramowitz, I. Stegun, table 25.4. */
    private static final double[] NODE = {
        0.046910077030668004, 0.23076534494715845, 0.5, 0.7692346550528415, 0.953089922969332
    };

    private static final double[] WEIGHT = {
        0.11846344252809454, 0.23931433524968324, 0.28444444444444444, 0.23931433524968324, 0.11846344252809454
    };

    private static final int PANELS = 8;

    @Test
    void strainAndWeightAreIntegralsAlongTheCable() {
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            double strain = 0;
            double weight = 0;
            double size = 0;
            boolean smooth = sys.law.isLinear();
            for (int i = 0; i < sys.spans; i++) {
                for (Piece p : geometry.pieces(i)) {
                    for (int panel = 0; panel < PANELS; panel++) {
                        for (int k = 0; k < NODE.length; k++) {
                            double s = p.length() * (panel + NODE[k]) / PANELS;
                            double share = p.length() * WEIGHT[k] / PANELS;
                            Vector3 t = p.startTension().plus(new Vector3(0, 0, p.weight() * s));
                            double e = sys.law.strain(t.magnitude());
                            strain += share * (t.magnitude() * e - sys.law.complementaryEnergy(t.magnitude()));
                            weight += share * p.weight() * (p.at(s).z() - sys.pz[0]);
                            size += share
                                    * (t.magnitude() * e
                                            + p.weight() * Math.abs(p.at(s).z() - sys.pz[0]));
                        }
                    }
                }
            }
            LineEnergy energy = LineEnergies.of(sys, random.state);
            // A corner of the curve within a panel leaves an error of the quadrature.
            double tolerance = smooth ? 1e-8 : 1e-4;
            assertThat(energy.strain()).as("seed %d", seed).isCloseTo(strain, within(tolerance * size));
            assertThat(energy.weight()).as("seed %d", seed).isCloseTo(weight, within(tolerance * size));
        }
    }

    @Test
    void loadsHangAtTheEndsOfTheirPieces() {
        int seen = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            LineEnergies energies = new LineEnergies(sys);
            double hanging = 0;
            double size = 1;
            for (int j = 0; j < sys.loads; j++) {
                if (random.state.active[j]) {
                    List<Piece> pieces = geometry.pieces(sys.loadSpan[j]);
                    double z = geometry.walk(pieces, sys.loadSpan[j], random.state.coordinate[j], j)
                                    .z()
                            - sys.pz[0];
                    assertThat(energies.height(random.state, j))
                            .as("seed %d", seed)
                            .isCloseTo(z, within(1e-10 * (1 + Math.abs(z))));
                    hanging += random.state.force[j] * z;
                    size += random.state.force[j] * (1 + Math.abs(z));
                    seen++;
                }
            }
            assertThat(LineEnergies.of(sys, random.state).hanging())
                    .as("seed %d", seed)
                    .isCloseTo(hanging, within(1e-10 * size));
        }
        assertThat(seen).isGreaterThan(CASES);
    }

    /** ½ k u², from the force held as installed: ½ (R² − R₀²)/k. */
    @Test
    void springsHoldHalfTheProductOfForceAndDisplacement() {
        int elastic = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            double expected = 0;
            double size = 0;
            for (int i = 0; i <= sys.spans; i++) {
                Vector3 held = new Vector3(sys.reference[3 * i], sys.reference[3 * i + 1], sys.reference[3 * i + 2]);
                double work =
                        0.5 * geometry.displacement(i).dot(geometry.reaction(i).plus(held));
                expected += work;
                size += geometry.displacement(i).magnitude()
                        * (geometry.reaction(i).magnitude() + held.magnitude());
            }
            elastic += size > 0 ? 1 : 0;
            assertThat(LineEnergies.of(sys, random.state).springs())
                    .as("seed %d", seed)
                    .isCloseTo(expected, within(1e-11 * size));
        }
        assertThat(elastic).isGreaterThan(CASES / 4);
    }

    /** Whatever it weighs and wherever it was last. */
    @Test
    void aLoadThatTakesNoPartDoesNotMatter() {
        LoadSlot[] slots = {new LoadSlot(0, true, 4), new LoadSlot(0, true, 6)};
        LineSystem sys = Lines.level(1500, 5, Passage.free(), 2, slots);
        LineState s = Lines.loaded(Lines.straight(sys, 1500, slots), 1, 800);
        s.tension[2] = -500;
        LineEnergy without = LineEnergies.of(sys, s);
        double height = new LineEnergies(sys).height(s, 1);
        s.force[0] = 1000;
        for (double last : new double[] {4, -1e9, 1e9}) {
            s.coordinate[0] = last;
            assertThat(LineEnergies.of(sys, s)).isEqualTo(without);
            assertThat(new LineEnergies(sys).height(s, 1)).isEqualTo(height);
        }
    }

    /** A load on a support hangs as high as that stands: R/k from where it was installed, R the force on it. */
    @Test
    void aLoadAtASupportHangsAsHighAsThatStands() {
        for (int support = 0; support < 3; support++) {
            List<Support> supports = List.of(
                    Support.end("a", Point.of(0, 0, 3)).withStiffness(new Stiffness(1e6, 1e6, 2e5)),
                    Support.intermediate("p", Point.of(10, 0, 4), Passage.free())
                            .withStiffness(new Stiffness(1e6, 1e6, 1e5)),
                    Support.end("b", Point.of(20, 0, 6)));
            LoadSlot slot = LoadSlot.atSupport(support, Math.min(support, 1));
            LineSystem sys = Lines.of(supports, 1500, 0, slot);
            LineState s = Lines.straight(sys, 1500, slot);
            double bare = LineEnergies.of(sys, s).hanging();
            assertThat(bare).isZero();
            double before = new LineGeometry(sys, s).support(support).z();
            s.force[0] = 900;
            double down = support == 0 ? 900 / 2e5 : support == 1 ? 900 / 1e5 : 0;
            double height = before - down - 3;
            assertThat(new LineEnergies(sys).height(s, 0))
                    .as("support %d", support)
                    .isCloseTo(height, within(1e-14));
            assertThat(LineEnergies.of(sys, s).hanging()).isCloseTo(900 * height, within(1e-11));
        }
    }

    private static final double SOFT = 8e6;

    /**
     * Rises to 6 kN at 0.5 m and 9 kN at 1 m, from the meeting with a first rise of 8 MN/m on, and has a stop of 200 kN/m:
     * drawn by hand as T over x, area by area.
     */
    private static InlineAbsorber absorber() {
        return InlineAbsorber.of(LoadingCurve.through(
                List.of(
                        new LoadingCurve.Corner(0, 4000),
                        new LoadingCurve.Corner(0.5, 6000),
                        new LoadingCurve.Corner(1, 9000)),
                SOFT,
                2e5));
    }

    /** A weightless straight line at a tension, with an absorber at one end, as far drawn as it says. */
    private static double work(int end, double tension, double yielded, boolean yielding, double extension) {
        Support a = Support.end("a", Point.of(0, 0, 0));
        Support b = Support.end("b", Point.of(3, 4, 12));
        LineSystem sys = Lines.of(
                end == 0 ? List.of(a.withInlineAbsorber(absorber()), b) : List.of(a, b.withInlineAbsorber(absorber())),
                tension,
                0);
        LineState s = Lines.straight(sys, tension);
        s.extension[end] = extension;
        s.yielded[end] = yielded;
        s.yielding[end] = yielding;
        s.piece[end] = absorber().curve().piece(extension);
        return LineEnergies.of(sys, s).inlineAbsorbers();
    }

    @Test
    void anAbsorberHoldsTheAreaUnderItsPull() {
        for (int end = 0; end < 2; end++) {
            // Not yet drawn out: a spring.
            assertThat(work(end, 3000, 0, false, 3000 / SOFT)).isCloseTo(0.5 * 3000 * 3000 / SOFT, within(1e-12));
            assertThat(work(end, 1, 0, false, 1 / SOFT)).isCloseTo(0.5 / SOFT, within(1e-20));
            // On its curve at 0.8 m, where it pulls with 7.8 kN: the area up to there, first rise included.
            double rise = 0.5 * drawn(4000) * 4000;
            double area = rise + 0.5 * (4000 + 6000) * (0.5 - drawn(4000)) + 0.5 * (6000 + 7800) * 0.3;
            assertThat(work(end, 7800, 0.8, true, 0.8)).isCloseTo(area, within(1e-3 * area));
            assertThat(work(end, 7800, 0.8, true, 0.8))
                    .isCloseTo(absorber().curve().work(0.8), within(1e-12 * area));
            // Let down from there to 2 kN along the first rise: it gives the area of the trapezium back.
            double back = 0.5 * (7800 + 2000) * (7800 - 2000) / SOFT;
            assertThat(work(end, 2000, 0.8, false, 0.8 - 5800 / SOFT))
                    .isCloseTo(absorber().curve().work(0.8) - back, within(1e-11 * area));
        }
    }

    /** Behind its last corner the stop is a spring of its own that begins at 9 kN. */
    @Test
    void anAbsorberAtItsStopHoldsTheAreaOfTheStopAsWell() {
        double full = absorber().curve().work(1);
        for (int end = 0; end < 2; end++) {
            assertThat(work(end, 11_000, 1, true, 1.01))
                    .isCloseTo(full + 0.5 * (9000 + 11_000) * 0.01, within(1e-9 * full));
            // Rounding may let it fall short of the last corner; the stop has not begun then.
            assertThat(atStop(0.99)).isEqualTo(full);
        }
    }

    private static double atStop(double extension) {
        Support a = Support.end("a", Point.of(0, 0, 0));
        Support b = Support.end("b", Point.of(10, 0, 0));
        LineSystem sys = Lines.of(List.of(a.withInlineAbsorber(absorber()), b), 9000, 0);
        LineState s = Lines.straight(sys, 9000);
        s.extension[0] = extension;
        s.yielding[0] = true;
        s.piece[0] = absorber().curve().pieces() - 1;
        return LineEnergies.of(sys, s).inlineAbsorbers();
    }

    private static double drawn(double force) {
        return force / SOFT;
    }

    @Test
    void theLineIsTheSumOfItsPartsWithoutTheLoads() {
        assertThat(new LineEnergy(1, 2, 4, 8, 16).line()).isEqualTo(15);
    }
}
