package org.lifeline.internal.motion.law;

import java.util.List;
import org.lifeline.model.cable.LoadElongation;

/**
 * A load–elongation law in the form that the stepping loop needs: tension, slope and energy against strain.
 *
 * <p>Immutable and thread-safe.
 */
public final class TensionStrainLaw {
    /** Slope of the first piece [N]; of the whole law if it is linear. */
    public final double stiffness;

    /** Largest slope of all pieces [N]. */
    public final double stiffest;

    /** Tells whether the law is one straight line. */
    public final boolean linear;

    private final double[] strain;
    private final double[] tension;
    private final double[] slope;
    private final double[] energy;

    /**
     * The law of a cable.
     *
     * @param law its corners
     */
    public TensionStrainLaw(LoadElongation law) {
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

    /**
     * Tension at a strain; nothing pushes.
     *
     * @param e strain [-]
     * @return tension [N], not negative
     */
    public double tension(double e) {
        if (e <= 0) {
            return 0;
        }
        int j = piece(e);
        return tension[j] + slope[j] * (e - strain[j]);
    }

    /**
     * Slope of the tension by the strain.
     *
     * @param e strain [-]
     * @return slope [N]
     */
    public double slope(double e) {
        return linear ? stiffness : slope[piece(e)];
    }

    /**
     * Strain energy per unstretched length.
     *
     * @param e strain [-]
     * @return energy [J/m]
     */
    public double energy(double e) {
        if (e <= 0) {
            return 0;
        }
        int j = piece(e);
        double over = e - strain[j];
        return energy[j] + over * (tension[j] + 0.5 * slope[j] * over);
    }
}
