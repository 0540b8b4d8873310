package org.lifeline.model.absorber;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * Force against extension of something that is pulled once, monotonically: an absorber, a lanyard, a brake.
 *
 * <p>A chain of straight pieces from (0, F₀), extension strictly rising, force never falling; flat pieces are
 * deployment plateaus. F₀ above zero means: rigid up to F₀. Behind the last point a stop takes over, with its own
 * stiffness or rigid.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class LoadingCurve {
    private final double[] extension;
    private final double[] force;
    private final double[] workTo;
    private final double stopStiffness;
    private final Start start;

    /**
     * Where deployment begins.
     *
     * @param activation force of the first deployment [N]
     * @param stiffness stiffness of the rise before it [N/m]; infinite where rigid
     */
    private record Start(double activation, double stiffness) {}

    private LoadingCurve(double[] extension, double[] force, double stopStiffness, Start start) {
        this.start = start;
        this.extension = extension;
        this.force = force;
        this.stopStiffness = stopStiffness;
        this.workTo = new double[force.length];
        for (int i = 1; i < force.length; i++) {
            workTo[i] = workTo[i - 1] + 0.5 * (force[i] + force[i - 1]) * (extension[i] - extension[i - 1]);
        }
    }

    /**
     * A corner of a loading curve.
     *
     * @param extension extension beyond the taut length [m], not negative
     * @param force force at that extension [N], not negative
     * @since 1.0.0
     */
    public record Corner(double extension, double force) {}

    /**
     * A curve through given corners.
     *
     * @param corners at least one; the first at extension 0; extension strictly rising, force never falling
     * @param initialStiffness stiffness of the first rise, up to where it meets the corners [N/m]; infinite for a
     *     start that is rigid up to the force of the first corner
     * @param stopStiffness stiffness behind the last corner [N/m]; infinite for a rigid stop
     * @return the curve
     * @throws org.lifeline.base.InvalidInputException with all violations
     */
    public static LoadingCurve through(List<Corner> corners, double initialStiffness, double stopStiffness) {
        List<Corner> list = LoadingCurveCorners.of(corners, initialStiffness, stopStiffness);
        double first = corners.get(0).force;
        double activation = first > 0 && list.get(0).force == 0 ? list.get(1).force : first;
        return new LoadingCurve(
                list.stream().mapToDouble(Corner::extension).toArray(),
                list.stream().mapToDouble(Corner::force).toArray(),
                stopStiffness,
                new Start(activation, initialStiffness));
    }

    /**
     * Several curves side by side: they share the extension and add their forces.
     *
     * @param curves at least one
     * @return the curve of the sum; it ends at the first rigid stop
     * @throws org.lifeline.base.InvalidInputException if there is none
     */
    public static LoadingCurve parallel(List<LoadingCurve> curves) {
        Violations.requiredAll("curves", curves);
        if (curves.isEmpty()) {
            new Violations()
                    .add("curves", GivenValue.text("[]"), InputRule.EMPTY, "curve")
                    .throwIfAny();
        }
        if (curves.size() == 1) {
            return curves.get(0);
        }
        double end = curves.stream()
                .filter(c -> Double.isInfinite(c.stopStiffness))
                .mapToDouble(LoadingCurve::maximumExtension)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        double[] x = curves.stream()
                .flatMapToDouble(c -> Arrays.stream(c.extension))
                .filter(e -> e <= end)
                .sorted()
                .distinct()
                .toArray();
        double[] f = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            for (LoadingCurve c : curves) {
                f[i] += x[i] == 0 ? c.force[0] : c.force(x[i]);
            }
        }
        double stop = Double.isFinite(end)
                ? Double.POSITIVE_INFINITY
                : curves.stream().mapToDouble(LoadingCurve::stopStiffness).sum();
        double first =
                curves.stream().mapToDouble(LoadingCurve::activationForce).sum();
        double soft =
                curves.stream().mapToDouble(LoadingCurve::initialStiffness).sum();
        return new LoadingCurve(x, f, stop, new Start(first, soft));
    }

    /**
     * A spring: force proportional to extension, without limit.
     *
     * @param stiffness stiffness [N/m], above zero
     * @return the curve
     */
    public static LoadingCurve spring(double stiffness) {
        return through(List.of(new Corner(0, 0)), Double.POSITIVE_INFINITY, stiffness);
    }

    /**
     * The same curve with all forces multiplied; extensions stay.
     *
     * @param factor factor on every force and stiffness [-], above zero
     * @return the new curve
     * @throws org.lifeline.base.InvalidInputException if the factor is not above zero, or brings forces or stiffnesses to
     *     where none can be stated, so that a spring would turn into something rigid or into nothing
     */
    public LoadingCurve scaled(double factor) {
        new Violations().positive("factor", factor, "").throwIfAny();
        checkFactor(factor);
        double[] f = force.clone();
        for (int i = 0; i < f.length; i++) {
            f[i] *= factor;
        }
        return new LoadingCurve(
                extension, f, stopStiffness * factor, new Start(start.activation * factor, start.stiffness * factor));
    }

    /**
     * A factor must leave forces and stiffnesses where they can be stated. Sums of curves may lie beyond that already: they
     * may stay there.
     */
    private void checkFactor(double factor) {
        double softest = Math.min(start.stiffness, stopStiffness);
        double stiffest = Math.max(ifFinite(start.stiffness), ifFinite(stopStiffness));
        double weakest = Double.POSITIVE_INFINITY;
        for (double f : force) {
            weakest = f > 0 ? Math.min(weakest, f) : weakest;
        }
        double least = Math.max(PlausibleRange.STIFFNESS.lowest() / softest, Double.MIN_NORMAL / weakest);
        double most = Math.min(
                PlausibleRange.STIFFNESS.highest() / stiffest, PlausibleRange.ARREST_FORCE.highest() / lastForce());
        Interval range = Interval.of(Math.min(1, least), Math.max(1, Math.min(most, Double.MAX_VALUE)));
        Violations v = new Violations();
        if (factor < range.low() || factor > range.high()) {
            GivenValue given = GivenValue.number(factor, "");
            v.add(Violation.of("factor", given, InputRule.OUTSIDE_RANGE, range.low(), range.high())
                    .allowing(AllowedRange.within(range)));
        }
        v.throwIfAny();
    }

    private static double ifFinite(double stiffness) {
        return Double.isFinite(stiffness) ? stiffness : 0;
    }

    /**
     * Force at the last corner, where the stop begins.
     *
     * @return force [N]
     */
    public double lastForce() {
        return force[force.length - 1];
    }

    /**
     * Force at an extension.
     *
     * @param x extension [m], not negative
     * @return force [N]; at a vertical piece its lower end; infinite beyond a rigid stop; NaN at NaN
     */
    public double force(double x) {
        int n = extension.length;
        if (x > extension[n - 1]) {
            return force[n - 1] + stopStiffness * (x - extension[n - 1]);
        }
        if (!(x > 0)) {
            return x <= 0 ? 0 : Double.NaN;
        }
        int i = 1;
        while (x > extension[i]) {
            i++;
        }
        if (x == extension[i]) {
            return force[i];
        }
        double share = (x - extension[i - 1]) / (extension[i] - extension[i - 1]);
        return force[i - 1] + share * (force[i] - force[i - 1]);
    }

    /**
     * Largest extension at which a force is not exceeded: at the force of a plateau, the plateau's far end.
     *
     * @param f force [N], not negative
     * @return extension [m]
     */
    public double farExtension(double f) {
        int n = extension.length;
        if (Double.isNaN(f)) {
            return f;
        }
        if (f >= force[n - 1]) {
            return beyondLast(f);
        }
        int i = n - 1;
        while (i > 0 && f < force[i - 1]) {
            i--;
        }
        return i == 0 ? 0 : inPiece(i, f);
    }

    /**
     * Smallest extension at which a force is reached: at the force of a plateau, the plateau's near end.
     *
     * @param f force [N], not negative
     * @return extension [m]
     */
    public double nearExtension(double f) {
        int n = extension.length;
        if (Double.isNaN(f)) {
            return f;
        }
        if (f > force[n - 1]) {
            return beyondLast(f);
        }
        int i = 0;
        while (f > force[i]) {
            i++;
        }
        return i == 0 ? 0 : inPiece(i, f);
    }

    /** The extension under a force from that of the last corner on; a rigid stop does not give. */
    private double beyondLast(double f) {
        int last = extension.length - 1;
        return extension[last] + (Double.isInfinite(stopStiffness) ? 0 : (f - force[last]) / stopStiffness);
    }

    private double inPiece(int i, double f) {
        double share = (f - force[i - 1]) / (force[i] - force[i - 1]);
        return extension[i - 1] + share * (extension[i] - extension[i - 1]);
    }

    /**
     * Slope dF/dx at an extension, on the side of larger extensions.
     *
     * @param x extension [m], not negative
     * @return slope [N/m]; 0 on a plateau, infinite at a rigid start or stop
     */
    public double slope(double x) {
        return slopeOfPiece(piece(x));
    }

    /**
     * The straight piece that begins at or before an extension; the last one is the stop.
     *
     * @param x extension [m], not negative
     * @return number of the piece, from 0
     */
    public int piece(double x) {
        int i = extension.length - 1;
        while (i > 0 && x < extension[i]) {
            i--;
        }
        return i;
    }

    /**
     * Number of straight pieces, the stop included.
     *
     * @return the number of corners
     */
    public int pieces() {
        return extension.length;
    }

    /**
     * Extension at which a piece begins.
     *
     * @param piece number of the piece, from 0; beyond the last one: where nothing begins
     * @return extension [m]; infinite beyond the last piece
     */
    public double pieceStart(int piece) {
        return piece < extension.length ? extension[checked(piece)] : Double.POSITIVE_INFINITY;
    }

    /**
     * Force on the straight line of a piece, also beyond its ends.
     *
     * @param piece number of the piece, from 0
     * @param x extension [m]
     * @return force [N]; infinite beyond a rigid stop
     */
    public double forceOnPiece(int piece, double x) {
        if (x == extension[checked(piece)]) {
            return force[piece]; // a rigid stop has no other force on its line
        }
        return force[piece] + slopeOfPiece(piece) * (x - extension[piece]);
    }

    /**
     * Slope of a piece.
     *
     * @param piece number of the piece, from 0
     * @return slope [N/m]; infinite for a rigid stop
     */
    public double slopeOfPiece(int piece) {
        if (checked(piece) == extension.length - 1) {
            return stopStiffness;
        }
        return (force[piece + 1] - force[piece]) / (extension[piece + 1] - extension[piece]);
    }

    private int checked(int piece) {
        return Violations.requiredIndex("piece", piece, extension.length);
    }

    /**
     * Work done up to an extension.
     *
     * @param x extension [m], not negative
     * @return ∫F dx [J], not negative; NaN at NaN
     */
    public double work(double x) {
        int n = extension.length;
        if (x > extension[n - 1]) {
            double over = x - extension[n - 1];
            return workTo[n - 1] + over * (force[n - 1] + 0.5 * stopStiffness * over);
        }
        if (!(x > 0)) {
            return x <= 0 ? 0 : Double.NaN;
        }
        int i = 1;
        while (x > extension[i]) {
            i++;
        }
        return workTo[i - 1] + 0.5 * (force[i - 1] + force(x)) * (x - extension[i - 1]);
    }

    /**
     * Extension at the last corner, where the stop takes over.
     *
     * @return extension [m]; 0 for a plain spring
     */
    public double maximumExtension() {
        return extension[extension.length - 1];
    }

    /**
     * Force below which nothing extends.
     *
     * @return F₀ [N]; above zero only for a rigid start
     */
    public double rigidForce() {
        return force[0];
    }

    /**
     * Force of the first deployment: where the initial rise ends; 0 for a curve that was given from no force on.
     *
     * @return force [N]
     */
    public double activationForce() {
        return start.activation;
    }

    /**
     * The straight piece on which deployment begins.
     *
     * @return number of the piece, from 0: the second one where an elastic rise comes first
     */
    public int firstYieldPiece() {
        return start.activation > 0 && force[0] == 0 ? 1 : 0;
    }

    /**
     * Stiffness of the first rise, and of unloading where something gives its elastic extension back.
     *
     * @return stiffness [N/m]; infinite for a rigid start
     */
    public double initialStiffness() {
        return start.stiffness;
    }

    /**
     * Stiffness behind the last corner.
     *
     * @return stiffness [N/m]; infinite for a rigid stop
     */
    public double stopStiffness() {
        return stopStiffness;
    }

    /**
     * The corners after the initial stiffness has been worked in.
     *
     * @return the corners, extension rising; unmodifiable
     */
    public List<Corner> corners() {
        Corner[] list = new Corner[force.length];
        for (int i = 0; i < list.length; i++) {
            list[i] = new Corner(extension[i], force[i]);
        }
        return List.of(list);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a curve with the same corners, first rise and stop
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof LoadingCurve c
                && Arrays.equals(extension, c.extension)
                && Arrays.equals(force, c.force)
                && Double.compare(stopStiffness, c.stopStiffness) == 0
                && start.equals(c.start);
    }

    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(extension), Arrays.hashCode(force), stopStiffness, start);
    }

    @Override
    public String toString() {
        return Arrays.toString(force) + " N at " + Arrays.toString(extension) + " m"
                + (Double.isInfinite(stopStiffness) ? "" : ", then " + stopStiffness + " N/m");
    }
}
