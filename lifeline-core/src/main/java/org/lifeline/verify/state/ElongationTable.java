package org.lifeline.verify.state;

import java.util.List;
import org.lifeline.base.Violations;
import org.lifeline.model.cable.LoadElongation;

/**
 * Strain and strain energy of a rope, read off the corners of its load–elongation law. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ElongationTable {
    private final List<LoadElongation.Corner> corners;

    /**
     * The table of a law.
     *
     * @param law the rope's load–elongation law
     * @throws org.lifeline.base.InvalidInputException if there is no law
     */
    public ElongationTable(LoadElongation law) {
        this.corners = Violations.required("law", law).corners();
    }

    /**
     * Tensions at which the law has a corner, apart from none and from the last, behind which it goes on.
     *
     * @return tensions [N], rising
     */
    public double[] cornerTensions() {
        return corners.subList(1, corners.size() - 1).stream()
                .mapToDouble(LoadElongation.Corner::tension)
                .toArray();
    }

    /**
     * Strain at a tension.
     *
     * @param tension tension [N], not negative
     * @return strain [-]
     */
    public double strain(double tension) {
        int i = upper(tension);
        LoadElongation.Corner a = corners.get(i - 1);
        LoadElongation.Corner b = corners.get(i);
        return a.strain() + (tension - a.tension()) * (b.strain() - a.strain()) / (b.tension() - a.tension());
    }

    /**
     * Energy stored in a unit of unstretched length, ∫T dε: trapezia below the law.
     *
     * @param tension tension [N], not negative
     * @return energy per length [J/m]
     */
    public double energy(double tension) {
        int last = upper(tension);
        double sum = 0;
        for (int i = 1; i <= last; i++) {
            LoadElongation.Corner a = corners.get(i - 1);
            double top = i == last ? tension : corners.get(i).tension();
            double end = i == last ? strain(tension) : corners.get(i).strain();
            sum += 0.5 * (a.tension() + top) * (end - a.strain());
        }
        return sum;
    }

    private int upper(double tension) {
        int i = 1;
        while (i < corners.size() - 1 && tension > corners.get(i).tension()) {
            i++;
        }
        return i;
    }
}
