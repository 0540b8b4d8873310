package org.lifeline.internal.path;

import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineAssembly;
import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.ResidualRates;

/**
 * Equilibrium at a prescribed height of a load, where the force is an unknown too. It passes the places at which a line
 * cannot carry more where it is. Not thread-safe.
 */
final class DescentControl {
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final int load;

    DescentControl(LineSystem system, Equilibrium equilibrium, int load) {
        this.system = system;
        this.equilibrium = equilibrium;
        this.load = load;
    }

    /**
     * Newton's method for the state and the force at which the load hangs at a height, with the modes held.
     *
     * @param s the start; replaced by the equilibrium
     * @param want elevation of the load above the as-installed first support [m]
     * @return false if none was found
     */
    boolean solve(LineState s, double want) {
        LineAssembly assembly = equilibrium.assembly;
        equilibrium.forget();
        LineEnergies energies = new LineEnergies(system);
        ResidualRates residualRates = new ResidualRates(system);
        double[] a = new double[system.unknowns.count()];
        double[] b = new double[system.unknowns.count()];
        LineState probe = s.copy();
        double span = system.chord[system.loadSpan[load]];
        for (int k = 0; k < 40; k++) {
            if (!assembly.assemble(s, true)) {
                return false;
            }
            double off = want - energies.height(s, load);
            equilibrium.residual = assembly.equations.worst;
            if (k > 0
                    && assembly.equations.worst < Equilibrium.CONVERGED
                    && Math.abs(off) < PathTolerances.DESCENT * span) {
                return true;
            }
            residualRates.byForce(s, load, b);
            for (int i = 0; i < a.length; i++) {
                a[i] = -assembly.equations.residual[i];
                b[i] = -b[i];
            }
            if (!assembly.factor(s)) {
                return false;
            }
            assembly.equations.matrix.solve(a);
            assembly.equations.matrix.solve(b);
            equilibrium.iterations++;
            double small = PathTolerances.FORCE_DIFFERENCE * s.force[load];
            equilibrium.apply(probe, s, small, b);
            probe.force[load] = s.force[load] + small;
            double byForce = energies.height(probe, load);
            equilibrium.apply(probe, s, -small, b);
            probe.force[load] = s.force[load] - small;
            byForce = (byForce - energies.height(probe, load)) / (2 * small);
            probe.force[load] = s.force[load];
            equilibrium.apply(probe, s, PathTolerances.STEP_DIFFERENCE, a);
            double byResidual =
                    (energies.height(probe, load) - energies.height(s, load)) / PathTolerances.STEP_DIFFERENCE;
            double force = (off - byResidual) / byForce;
            if (!Double.isFinite(force) || Math.abs(force) > 0.5 * s.force[load]) {
                return false;
            }
            equilibrium.apply(s, s, 1, a);
            equilibrium.apply(s, s, force, b);
            s.force[load] += force;
        }
        return false;
    }
}
