package org.lifeline.model;

import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * Stiffness of an anchor along the axes x, y and z; rigid where nothing else is said.
 *
 * <p>Coordinates of an anchor are as installed: it has already yielded to the installed reaction; only changes of the
 * reaction displace it further. Immutable and thread-safe.
 *
 * @param x stiffness along x [N/m], above zero; infinite where rigid
 * @param y stiffness along y [N/m], above zero; infinite where rigid
 * @param z stiffness along z [N/m], above zero; infinite where rigid
 * @since 1.0.0
 */
public record Stiffness(double x, double y, double z) {
    private static final Stiffness RIGID =
            new Stiffness(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    /**
     * Checks the three numbers.
     *
     * @param x stiffness along x [N/m], above zero; infinite where rigid
     * @param y stiffness along y [N/m], above zero; infinite where rigid
     * @param z stiffness along z [N/m], above zero; infinite where rigid
     * @throws org.lifeline.base.InvalidInputException if one is not above zero
     */
    public Stiffness {
        Violations v = new Violations();
        check(v, "x", x);
        check(v, "y", y);
        check(v, "z", z);
        v.throwIfAny();
    }

    private static void check(Violations v, String path, double value) {
        if (value > 0) {
            PlausibleRange.STIFFNESS.checkOrRigid(v, path, value);
        } else {
            v.add(Violation.of(path, GivenValue.number(value, "N/m"), InputRule.STIFFNESS_NOT_ABOVE_ZERO)
                    .allowing(AllowedRange.above(0)));
        }
    }

    /**
     * A rigid anchor.
     *
     * @return infinite stiffness in all directions
     */
    public static Stiffness rigid() {
        return RIGID;
    }

    /**
     * Elastic along x only.
     *
     * @param x stiffness [N/m], above zero
     * @return the stiffness
     */
    public static Stiffness alongX(double x) {
        return RIGID.withX(x);
    }

    /**
     * The same with another stiffness along x.
     *
     * @param value stiffness [N/m], above zero
     * @return the new stiffness
     */
    public Stiffness withX(double value) {
        return new Stiffness(value, y, z);
    }

    /**
     * The same with another stiffness along y.
     *
     * @param value stiffness [N/m], above zero
     * @return the new stiffness
     */
    public Stiffness withY(double value) {
        return new Stiffness(x, value, z);
    }

    /**
     * The same with another stiffness along z.
     *
     * @param value stiffness [N/m], above zero
     * @return the new stiffness
     */
    public Stiffness withZ(double value) {
        return new Stiffness(x, y, value);
    }

    /**
     * Tells whether no direction yields.
     *
     * @return true if all three are infinite
     */
    public boolean isRigid() {
        return Double.isInfinite(x) && Double.isInfinite(y) && Double.isInfinite(z);
    }
}
