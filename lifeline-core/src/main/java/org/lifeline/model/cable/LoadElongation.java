package org.lifeline.model.cable;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * How a rope stretches: tension against strain, linear or by straight pieces.
 *
 * <p>The law is elastic: unloading follows the same curve. Strain is the elongation over the unstretched length.
 * Beyond the last corner the last piece goes on. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class LoadElongation {
    private final double[] strain;
    private final double[] tension;
    private final double[] compliance;
    private final boolean stiffnessAlone;

    private LoadElongation(double[] strain, double[] tension, boolean stiffnessAlone) {
        this.stiffnessAlone = stiffnessAlone;
        this.strain = strain;
        this.tension = tension;
        this.compliance = new double[strain.length - 1];
        for (int j = 0; j < compliance.length; j++) {
            compliance[j] = (strain[j + 1] - strain[j]) / (tension[j + 1] - tension[j]);
        }
    }

    /**
     * A corner of a load–elongation curve.
     *
     * @param strain elongation over unstretched length [-]
     * @param tension tension at that strain [N]
     * @since 1.0.0
     */
    public record Corner(double strain, double tension) {}

    /**
     * A rope of constant axial stiffness.
     *
     * @param axialStiffness EA [N], above zero
     * @return the law
     * @throws org.lifeline.base.InvalidInputException if EA is not above zero
     */
    public static LoadElongation linear(double axialStiffness) {
        new Violations().positive("axialStiffness", axialStiffness, "N").throwIfAny();
        return new LoadElongation(new double[] {0, 1}, new double[] {0, axialStiffness}, true);
    }

    /**
     * A rope with a measured curve.
     *
     * @param corners at least two, the first (0, 0), strain and tension strictly rising
     * @return the law
     * @throws org.lifeline.base.InvalidInputException with all violations
     */
    public static LoadElongation curve(List<Corner> corners) {
        Violations v = new Violations();
        String path = "loadElongation";
        Violations.requiredAll(path, corners);
        PlausibleRange.CORNERS.checkNumber(v, path, corners.size());
        if (corners.size() < 2) {
            v.add(path, GivenValue.countOf(corners.size(), "corners"), InputRule.TOO_FEW_CORNERS, "two corners");
        }
        for (int i = 0; i < corners.size(); i++) {
            Corner c = corners.get(i);
            String at = path + "[" + i + "]";
            v.finite(at + "[0]", c.strain, "").finite(at + "[1]", c.tension, "N");
            if (i == 0) {
                if (c.strain != 0 || c.tension != 0) {
                    String stated = Violations.show(c.strain, "") + ", " + Violations.show(c.tension, "N");
                    v.add(at, GivenValue.text(stated), InputRule.CURVE_START);
                }
            } else {
                Corner b = corners.get(i - 1);
                if (c.strain <= b.strain) {
                    v.add(Violation.of(at + "[0]", GivenValue.number(c.strain, ""), InputRule.NOT_RISING, "strain")
                            .allowing(AllowedRange.above(b.strain)));
                }
                if (c.tension <= b.tension) {
                    v.add(Violation.of(at + "[1]", GivenValue.number(c.tension, "N"), InputRule.NOT_RISING, "tension")
                            .allowing(AllowedRange.above(b.tension)));
                }
            }
        }
        v.throwIfAny();
        return new LoadElongation(
                corners.stream().mapToDouble(Corner::strain).toArray(),
                corners.stream().mapToDouble(Corner::tension).toArray(),
                false);
    }

    /**
     * Number of straight pieces.
     *
     * @return 1 for a linear rope
     */
    public int pieces() {
        return strain.length - 1;
    }

    /**
     * Tension at which a piece begins.
     *
     * @param piece number of the piece, from 0
     * @return tension [N]; 0 for the first
     */
    public double lowerTension(int piece) {
        return tension[checked(piece)];
    }

    /**
     * Compliance of a piece, dε/dT.
     *
     * @param piece number of the piece, from 0
     * @return 1/EA of the piece [1/N]
     */
    public double compliance(int piece) {
        return compliance[checked(piece)];
    }

    /**
     * Strain that the line of a piece would have at no tension: ε = offset + compliance · T within the piece.
     *
     * @param piece number of the piece, from 0
     * @return offset [-]; 0 for the first piece
     */
    public double offset(int piece) {
        return strain[checked(piece)] - compliance(piece) * tension[piece];
    }

    private int checked(int piece) {
        return Violations.requiredIndex("piece", piece, compliance.length);
    }

    /**
     * Tells whether the stiffness is constant.
     *
     * @return true for a single piece
     */
    public boolean isLinear() {
        return strain.length == 2;
    }

    /**
     * Tells whether a stiffness is all that is known, which does not say how far it holds.
     *
     * @return true for a law made by {@link #linear}, false for a curve, also one of a single piece
     */
    public boolean isStiffnessAlone() {
        return stiffnessAlone;
    }

    /**
     * Strain at a tension.
     *
     * @param t tension [N], not negative
     * @return strain [-]
     */
    public double strain(double t) {
        int j = piece(t);
        return strain[j] + compliance(j) * (t - tension[j]);
    }

    /**
     * Tension at a strain; nothing pushes.
     *
     * @param e strain [-]
     * @return tension [N]; 0 where the strain is not above zero
     */
    public double tension(double e) {
        if (e <= 0) {
            return 0;
        }
        int j = strain.length - 2;
        while (j > 0 && e < strain[j]) {
            j--;
        }
        return tension[j] + (e - strain[j]) / compliance(j);
    }

    /**
     * The piece in which a tension lies.
     *
     * @param t tension [N], not negative
     * @return number of the piece, from 0
     */
    public int piece(double t) {
        int j = strain.length - 2;
        while (j > 0 && t < tension[j]) {
            j--;
        }
        return j;
    }

    /**
     * Strain energy per unstretched length, ∫T dε.
     *
     * @param t tension [N], not negative
     * @return energy per length [J/m]
     */
    public double strainEnergy(double t) {
        return t * strain(t) - complementaryEnergy(t);
    }

    /**
     * Complementary energy per unstretched length, ∫ε dT.
     *
     * @param t tension [N], not negative
     * @return energy per length [J/m]
     */
    public double complementaryEnergy(double t) {
        double sum = 0;
        int last = piece(t);
        for (int j = 0; j <= last; j++) {
            double top = j == last ? t : tension[j + 1];
            double top2 = strain[j] + compliance(j) * (top - tension[j]);
            sum += 0.5 * (strain[j] + top2) * (top - tension[j]);
        }
        return sum;
    }

    /**
     * Stiffness at the start of the curve.
     *
     * @return EA of the first piece [N]
     */
    public double initialStiffness() {
        return 1 / compliance(0);
    }

    /**
     * The corners.
     *
     * @return the corners in rising order; for a linear rope the origin and strain 1; unmodifiable
     */
    public List<Corner> corners() {
        Corner[] list = new Corner[strain.length];
        for (int i = 0; i < list.length; i++) {
            list[i] = new Corner(strain[i], tension[i]);
        }
        return List.of(list);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a law with the same corners, of the same form
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof LoadElongation l
                && stiffnessAlone == l.stiffnessAlone
                && Arrays.equals(strain, l.strain)
                && Arrays.equals(tension, l.tension);
    }

    @Override
    public int hashCode() {
        return Objects.hash(stiffnessAlone, Arrays.hashCode(strain), Arrays.hashCode(tension));
    }

    @Override
    public String toString() {
        return stiffnessAlone
                ? "EA " + tension[1] + " N"
                : Arrays.toString(tension) + " N at strains " + Arrays.toString(strain);
    }
}
