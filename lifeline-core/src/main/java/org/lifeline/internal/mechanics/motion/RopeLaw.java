package org.lifeline.internal.mechanics.motion;

import java.util.List;
import org.lifeline.model.LoadElongation;

/**
 * A load–elongation law in the form that the stepping loop needs: tension, slope and energy against strain.
 *
 * <p>Immutable and thread-safe.
 */
final class RopeLaw {
    /** Slope of the first piece [N]; of the whole law if it is linear. */
    final double stiffness;

    /** Largest slope of all pieces [N]. */
    final double stiffest;

    /** Tells whether the law is one straight line. */
    final boolean linear;

    private final double[] strain;
    private final double[] tension;
    private final double[] slope;
    private final double[] energy;

    RopeLaw(LoadElongation law) {
        List<LoadElongation.Corner> corners = law.corners();
        int n = law.pieces();
        strain = new double[n];
        tension = new double[n];
        slope = new double[n];
        energy = new double[n];
        double most = 0;
        for (int j = 0; j < n; j++) {
            strain[j] = corners.get(j).strain();
            tension[j] = corners.get(j).tension();
            slope[j] = 1 / law.compliance(j);
            energy[j] = law.strainEnergy(tension[j]);
            most = Math.max(most, slope[j]);
        }
        stiffness = slope[0];
        stiffest = most;
        linear = n == 1;
    }

    private int piece(double e) {
        int j = strain.length - 1;
        while (j > 0 && e < strain[j]) {
            j--;
        }
        return j;
    }

    /** Tension at a strain [N]; nothing pushes. */
    double tension(double e) {
        if (e <= 0) {
            return 0;
        }
        int j = piece(e);
        return tension[j] + slope[j] * (e - strain[j]);
    }

    /** Slope of the tension at a strain [N]. */
    double slope(double e) {
        return linear ? stiffness : slope[piece(e)];
    }

    /** Strain energy per unstretched length [J/m]. */
    double energy(double e) {
        if (e <= 0) {
            return 0;
        }
        int j = piece(e);
        double over = e - strain[j];
        return energy[j] + over * (tension[j] + 0.5 * slope[j] * over);
    }
}
