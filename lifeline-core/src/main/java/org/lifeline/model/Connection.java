package org.lifeline.model;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.DeploymentRange;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * The connecting subsystem between the harness and the line, as far as it takes part in the arrest: its length and its
 * force against extension on first loading, on both sides of its force range.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Connection implements Canonical {
    /**
     * The kinds of connecting subsystem.
     *
     * @since 1.0.0
     */
    public enum Kind {
        /** Lanyard with personal energy absorber. */
        LANYARD_WITH_ABSORBER,
        /** Lanyard without an absorber. */
        PLAIN_LANYARD,
        /** Lanyard whose loading curve is given, the same for forces and distances. */
        GIVEN_CURVE,
        /** Self-retracting device. */
        SELF_RETRACTING
    }

    private final Kind kind;
    private final double length;
    private final DeploymentRange deployment;

    private Connection(Kind kind, double length, DeploymentRange deployment) {
        this.kind = kind;
        this.length = length;
        this.deployment = deployment;
        Violations v = new Violations();
        PlausibleRange.LENGTH.check(v, kind == Kind.SELF_RETRACTING ? "lockDistance" : "tautLength", length);
        v.throwIfAny();
    }

    /**
     * A lanyard with a personal energy absorber.
     *
     * @param tautLength length from line to harness attachment when taut [m], not negative
     * @param absorber the absorber
     * @return the subsystem
     */
    public static Connection lanyard(double tautLength, PersonalAbsorber absorber) {
        Violations.required("absorber", absorber);
        return new Connection(Kind.LANYARD_WITH_ABSORBER, tautLength, absorber.deployment);
    }

    /**
     * A lanyard without an absorber.
     *
     * @param tautLength length from line to harness attachment when taut [m], not negative
     * @param spring its stiffness, as a curve; see {@link LoadingCurve#spring}
     * @return the subsystem
     */
    public static Connection plainLanyard(double tautLength, LoadingCurve spring) {
        Violations.required("stiffness", spring);
        return new Connection(Kind.PLAIN_LANYARD, tautLength, DeploymentRange.of(spring, spring));
    }

    /**
     * A lanyard whose loading curve is known, used for forces and distances alike.
     *
     * @param tautLength length from line to harness attachment when taut [m], not negative
     * @param curve force against extension
     * @return the subsystem
     */
    public static Connection givenCurve(double tautLength, LoadingCurve curve) {
        Violations.required("loadingCurve", curve);
        return new Connection(Kind.GIVEN_CURVE, tautLength, DeploymentRange.of(curve, curve));
    }

    /**
     * A self-retracting device: kept taut until it locks.
     *
     * @param lockDistance fall from the start to lock-up, slack included [m], not negative
     * @param brake its brake
     * @return the subsystem
     */
    public static Connection selfRetracting(double lockDistance, PersonalAbsorber brake) {
        Violations.required("brakeForce", brake);
        return new Connection(Kind.SELF_RETRACTING, lockDistance, brake.deployment);
    }

    /**
     * The same subsystem with all forces multiplied, on both sides of its force range and under every stated condition;
     * extensions stay.
     *
     * @param factor factor on every force and stiffness [-], above zero
     * @return the new subsystem
     * @throws org.lifeline.base.InvalidInputException if the factor is not above zero
     */
    public Connection withForcesScaled(double factor) {
        return new Connection(kind, length, deployment.scaled(factor));
    }

    /**
     * The same subsystem with another length.
     *
     * @param value taut length, or for a self-retracting device the lock-up distance [m], not negative
     * @return the new subsystem
     * @throws org.lifeline.base.InvalidInputException if the length is negative
     */
    public Connection withLength(double value) {
        return new Connection(kind, value, deployment);
    }

    /**
     * Which kind of subsystem this is.
     *
     * @return the kind
     */
    public Kind kind() {
        return kind;
    }

    /**
     * Length from the line to the harness attachment when the subsystem is taut, before any extension.
     *
     * @param lineAboveHarness height of the line above the harness attachment just before the fall [m], negative when
     *     the line is below
     * @return length [m]; for a self-retracting device, what is paid out plus the lock-up distance
     */
    public double tautLength(double lineAboveHarness) {
        return kind == Kind.SELF_RETRACTING ? Math.abs(lineAboveHarness) + length : length;
    }

    /**
     * Free fall of the harness attachment before the subsystem begins to carry force.
     *
     * @param lineAboveHarness height of the line above the harness attachment just before the fall [m], negative when
     *     the line is below
     * @return free fall [m], never negative
     */
    public double freeFall(double lineAboveHarness) {
        return Math.max(0, tautLength(lineAboveHarness) - lineAboveHarness);
    }

    /**
     * Force against extension on one side of the force range, on the safe side of all conditions that are stated, at whatever
     * temperature.
     *
     * @param side clearance side or maximum side
     * @return the curve
     */
    public LoadingCurve curve(DeploymentForce side) {
        return deployment.curve(side);
    }

    /**
     * Force against extension on one side of the force range in an arrest: on the safe side of the conditions that apply at its
     * temperature.
     *
     * @param side clearance side or maximum side
     * @param temperature temperature of the arrest [°C]
     * @return the curve
     * @throws org.lifeline.base.InvalidInputException if it is no temperature
     */
    public LoadingCurve curve(DeploymentForce side, double temperature) {
        return deployment.curve(side, temperature);
    }

    /**
     * How the subsystem deploys in the dry and under the conditions that are stated besides.
     *
     * @return the range
     */
    public DeploymentRange deployment() {
        return deployment;
    }

    /**
     * Largest extension before the subsystem bottoms out.
     *
     * @return extension [m]; infinite for a plain lanyard, which cannot bottom out
     */
    public double maximumExtension() {
        return kind == Kind.PLAIN_LANYARD
                ? Double.POSITIVE_INFINITY
                : deployment.dry(DeploymentForce.MAXIMUM).maximumExtension();
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a subsystem of the same kind, length, curves and conditions
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Connection c
                && kind == c.kind
                && Double.compare(length, c.length) == 0
                && deployment.equals(c.deployment);
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind, length, deployment);
    }

    @Override
    public String toString() {
        return switch (kind) {
                    case LANYARD_WITH_ABSORBER -> "lanyard with absorber";
                    case PLAIN_LANYARD -> "plain lanyard";
                    case GIVEN_CURVE -> "lanyard";
                    case SELF_RETRACTING -> "self-retracting device";
                }
                + ", " + length + " m, " + deployment;
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }

    /**
     * Personal energy absorber, or the brake of a self-retracting device. Immutable and thread-safe.
     *
     * @since 1.0.0
     */
    public static final class PersonalAbsorber {
        private final DeploymentRange deployment;

        private PersonalAbsorber(DeploymentRange deployment) {
            this.deployment = deployment;
        }

        /**
         * Starts an absorber.
         *
         * @return an empty builder
         */
        public static AbsorberBuilder builder() {
            return new AbsorberBuilder();
        }

        /**
         * Force against extension on one side of the force range, on the safe side of all conditions that are stated.
         *
         * @param side clearance side or maximum side
         * @return the curve
         */
        public LoadingCurve curve(DeploymentForce side) {
            return deployment.curve(side);
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof PersonalAbsorber a && deployment.equals(a.deployment);
        }

        @Override
        public int hashCode() {
            return 31 + deployment.hashCode();
        }

        @Override
        public String toString() {
            return "absorber: " + deployment;
        }
    }

    /**
     * Collects what is known of a personal energy absorber. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class AbsorberBuilder {
        private @Nullable Double clearanceForce;
        private @Nullable Double maximumForce;
        private @Nullable Double maximumExtension;
        private double initialStiffness = Double.POSITIVE_INFINITY;
        private double stopStiffness = Double.POSITIVE_INFINITY;
        private final List<@Nullable AbsorberCondition> conditions = new ArrayList<>();

        private AbsorberBuilder() {}

        /**
         * Clearance deployment force F_clr, the low one.
         *
         * @param value force [N], above zero
         * @return this
         */
        public AbsorberBuilder clearanceForce(double value) {
            clearanceForce = value;
            return this;
        }

        /**
         * Maximum deployment force F_max, the high one.
         *
         * @param value force [N], at least the clearance deployment force
         * @return this
         */
        public AbsorberBuilder maximumForce(double value) {
            maximumForce = value;
            return this;
        }

        /**
         * Extension at which the absorber is used up, counted from the taut length.
         *
         * @param value extension [m], above zero
         * @return this
         */
        public AbsorberBuilder maximumExtension(double value) {
            maximumExtension = value;
            return this;
        }

        /**
         * Stiffness up to the deployment force; rigid unless set.
         *
         * @param value stiffness [N/m], above zero
         * @return this
         */
        public AbsorberBuilder initialStiffness(double value) {
            initialStiffness = value;
            return this;
        }

        /**
         * Stiffness behind the maximum extension; rigid unless set.
         *
         * @param value stiffness [N/m], above zero
         * @return this
         */
        public AbsorberBuilder stopStiffness(double value) {
            stopStiffness = value;
            return this;
        }

        /**
         * Adds forces that are known for a condition other than dry, to which the two forces above belong. They widen the
         * range: the lowest force of all counts for distances, the highest for loads.
         *
         * @param value the condition with its forces
         * @return this
         */
        public AbsorberBuilder condition(AbsorberCondition value) {
            conditions.add(value);
            return this;
        }

        /**
         * Checks everything and makes the absorber.
         *
         * @return the absorber
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public PersonalAbsorber build() {
            Violations v = new Violations();
            double clear = positive(v, "clearanceForce", clearanceForce, PlausibleRange.ARREST_FORCE);
            double most = positive(v, "maximumForce", maximumForce, PlausibleRange.ARREST_FORCE);
            double extension = positive(v, "maximumExtension", maximumExtension, PlausibleRange.LENGTH);
            if (most < clear) {
                v.add(Violation.of("maximumForce", GivenValue.number(most, "N"), InputRule.MAXIMUM_BELOW_CLEARANCE)
                        .allowing(AllowedRange.atLeast(clear)));
            }
            stiffness(v, "initialStiffness", initialStiffness);
            stiffness(v, "stopStiffness", stopStiffness);
            List<AbsorberCondition> stated = stated(v);
            v.throwIfAny();
            DeploymentRange range = DeploymentRange.of(plateau(clear, extension), plateau(most, extension));
            for (AbsorberCondition each : stated) {
                range = range.with(
                        each, plateau(each.clearanceForce(), extension), plateau(each.maximumForce(), extension));
            }
            return new PersonalAbsorber(range);
        }

        private List<AbsorberCondition> stated(Violations v) {
            Map<AbsorberCondition.Kind, AbsorberCondition> byKind = new EnumMap<>(AbsorberCondition.Kind.class);
            for (int i = 0; i < conditions.size(); i++) {
                AbsorberCondition each = conditions.get(i);
                if (each == null) {
                    v.missing("condition[" + i + "]");
                } else {
                    v.require(
                            byKind.putIfAbsent(each.kind(), each) == null,
                            "condition[" + i + "]",
                            GivenValue.text(each.kind().label()),
                            InputRule.CONDITION_TWICE);
                }
            }
            // In the order of the kinds, whatever the order of statement: what is the same has one form.
            return List.copyOf(byKind.values());
        }

        private static double positive(Violations v, String path, @Nullable Double value, PlausibleRange range) {
            if (value == null) {
                v.missing(path);
                return Double.NaN;
            }
            if (value > 0) {
                range.check(v, path, value);
            } else {
                v.positive(path, value, range.unit());
            }
            return value;
        }

        private static void stiffness(Violations v, String path, double value) {
            if (value > 0) {
                PlausibleRange.STIFFNESS.checkOrRigid(v, path, value);
            } else {
                v.add(Violation.of(
                                path, GivenValue.number(value, "N/m"), InputRule.RATE_NOT_ABOVE_ZERO, "start or stop")
                        .allowing(AllowedRange.above(0)));
            }
        }

        private LoadingCurve plateau(double force, double extension) {
            return LoadingCurve.through(
                    List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(extension, force)),
                    initialStiffness,
                    stopStiffness);
        }
    }
}
