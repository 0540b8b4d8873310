package org.lifeline.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lifeline.base.Violations;

/**
 * Force against extension of something that is pulled once, monotonically: an absorber, a lanyard, a brake.
 *
 * <p>A chain of straight pieces from (0, F₀), extension strictly rising, force never falling; flat pieces are
 * deployment plateaus. F₀ above zero means: rigid up to F₀. Behind the last point a stop takes over, with its own
 * stiffness or rigid.
 *
 * <p>Immutable and thread-safe.
 */
public final class LoadingCurve {
    private final double[] extension;
    private final double[] force;
    private final double[] workTo;
    private final double stopStiffness;
    private final double activation;
    private final double initialStiffness;

    private LoadingCurve(double[] extension, double[] force, double stopStiffness, double[] start) {
        this.activation = start[0];
        this.initialStiffness = start[1];
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
        Violations v = new Violations();
        v.require(!corners.isEmpty(), "curve", "[]", "must have at least one corner");
        for (int i = 0; i < corners.size(); i++) {
            Corner c = corners.get(i);
            String path = "curve[" + i + "]";
            v.notNegative(path + "[0]", c.extension, "m").notNegative(path + "[1]", c.force, "N");
            if (i == 0) {
                v.require(
                        c.extension == 0, path + "[0]", Violations.show(c.extension, "m"), "must start at extension 0");
            } else {
                Corner b = corners.get(i - 1);
                v.require(
                        !(c.extension <= b.extension),
                        path + "[0]",
                        Violations.show(c.extension, "m"),
                        "must be larger than the extension before it");
                v.require(
                        !(c.force < b.force),
                        path + "[1]",
                        Violations.show(c.force, "N"),
                        "must not be lower than the force before it");
            }
        }
        v.require(
                initialStiffness > 0,
                "initialStiffness",
                Violations.show(initialStiffness, "N/m"),
                "must be above zero (leave it out for a rigid start)");
        v.require(
                stopStiffness > 0,
                "stopStiffness",
                Violations.show(stopStiffness, "N/m"),
                "must be above zero (leave it out for a rigid stop)");
        v.throwIfAny();
        List<Corner> list = meet(corners, initialStiffness, v);
        v.throwIfAny();
        Corner last = list.get(list.size() - 1);
        v.require(
                        last.force > 0 || Double.isFinite(stopStiffness),
                        "curve",
                        list.size() + " corners",
                        "must reach a force above zero")
                .throwIfAny();
        return new LoadingCurve(
                list.stream().mapToDouble(Corner::extension).toArray(),
                list.stream().mapToDouble(Corner::force).toArray(),
                stopStiffness,
                new double[] {
                    corners.get(0).force > 0 && list.get(0).force == 0 ? list.get(1).force : corners.get(0).force,
                    initialStiffness
                });
    }

    /**
     * Several curves side by side: they share the extension and add their forces.
     *
     * @param curves at least one
     * @return the curve of the sum; it ends at the first rigid stop
     */
    public static LoadingCurve parallel(List<LoadingCurve> curves) {
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
        return new LoadingCurve(x, f, stop, new double[] {first, soft});
    }

    /** Replaces the start of the curve by the first rise F = k x up to the point where the two meet. */
    private static List<Corner> meet(List<Corner> corners, double k, Violations v) {
        if (corners.get(0).force == 0 || Double.isInfinite(k)) {
            return corners;
        }
        List<Corner> list = new ArrayList<>();
        list.add(new Corner(0, 0));
        for (int i = 0; i < corners.size(); i++) {
            Corner a = corners.get(i);
            if (list.size() > 1) {
                list.add(a);
                continue;
            }
            boolean end = i == corners.size() - 1;
            double slope =
                    end ? 0 : (corners.get(i + 1).force - a.force) / (corners.get(i + 1).extension - a.extension);
            double x = k > slope ? (a.force - slope * a.extension) / (k - slope) : Double.POSITIVE_INFINITY;
            if (end ? x <= a.extension : x < corners.get(i + 1).extension) {
                list.add(new Corner(x, a.force + slope * (x - a.extension)));
            }
        }
        v.require(
                list.size() > 1,
                "initialStiffness",
                Violations.show(k, "N/m"),
                "is so low that the deployment force is not reached within the maximum extension");
        return list;
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
     * @throws org.lifeline.base.InvalidInputException if the factor is not above zero
     */
    public LoadingCurve scaled(double factor) {
        new Violations().positive("factor", factor, "").throwIfAny();
        double[] f = force.clone();
        for (int i = 0; i < f.length; i++) {
            f[i] *= factor;
        }
        return new LoadingCurve(
                extension, f, stopStiffness * factor, new double[] {activation * factor, initialStiffness * factor});
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
     * @return force [N]; at a vertical piece its lower end; infinite beyond a rigid stop
     */
    public double force(double x) {
        int n = extension.length;
        if (x > extension[n - 1]) {
            return force[n - 1] + stopStiffness * (x - extension[n - 1]);
        }
        if (x <= 0) {
            return 0;
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
        if (f >= force[n - 1]) {
            return extension[n - 1] + (f - force[n - 1]) / stopStiffness;
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
        if (f > force[n - 1]) {
            return extension[n - 1] + (f - force[n - 1]) / stopStiffness;
        }
        int i = 0;
        while (f > force[i]) {
            i++;
        }
        return i == 0 ? 0 : inPiece(i, f);
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
        return piece < extension.length ? extension[piece] : Double.POSITIVE_INFINITY;
    }

    /**
     * Force on the straight line of a piece, also beyond its ends.
     *
     * @param piece number of the piece, from 0
     * @param x extension [m]
     * @return force [N]; infinite beyond a rigid stop
     */
    public double forceOnPiece(int piece, double x) {
        if (x == extension[piece]) {
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
        if (piece == extension.length - 1) {
            return stopStiffness;
        }
        return (force[piece + 1] - force[piece]) / (extension[piece + 1] - extension[piece]);
    }

    /**
     * Work done up to an extension.
     *
     * @param x extension [m], not negative
     * @return ∫F dx [J], not negative
     */
    public double work(double x) {
        int n = extension.length;
        if (x > extension[n - 1]) {
            double over = x - extension[n - 1];
            return workTo[n - 1] + over * (force[n - 1] + 0.5 * stopStiffness * over);
        }
        if (x <= 0) {
            return 0;
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
        return activation;
    }

    /**
     * The straight piece on which deployment begins.
     *
     * @return number of the piece, from 0: the second one where an elastic rise comes first
     */
    public int firstYieldPiece() {
        return activation > 0 && force[0] == 0 ? 1 : 0;
    }

    /**
     * Stiffness of the first rise, and of unloading where something gives its elastic extension back.
     *
     * @return stiffness [N/m]; infinite for a rigid start
     */
    public double initialStiffness() {
        return initialStiffness;
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
}
