package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Vector3;

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

    @Test
    void theLineIsTheSumOfItsPartsWithoutTheLoads() {
        assertThat(new LineEnergy(1, 2, 4, 8, 16).line()).isEqualTo(15);
    }
}
