package org.lifeline.model.absorber;

import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * Deployment forces of an absorber when it is wet, cold or hot, as the user states them with their source. Nothing is derived from
 * the forces in the dry; what is not stated is not looked at.
 *
 * <p>An absorber may be wet in any arrest. Cold and hot apply at every temperature as well, unless the highest temperature of the
 * cold or the lowest of the heat is stated, see decision 56.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder}.
 *
 * @since 1.0.0
 */
public final class AbsorberCondition {
    private final Kind kind;
    private final double clearanceForce;
    private final double maximumForce;
    private final @Nullable Double temperature;
    private final String source;

    private AbsorberCondition(Builder b) {
        this.kind = b.kind;
        this.clearanceForce = Objects.requireNonNull(b.clearanceForce);
        this.maximumForce = Objects.requireNonNull(b.maximumForce);
        this.temperature = b.temperature;
        this.source = Objects.requireNonNull(b.source);
    }

    /**
     * The conditions other than dry at room temperature.
     *
     * @since 1.0.0
     */
    public enum Kind {
        /** Wet; may be so in any arrest. */
        WET,
        /** Cold; up to a temperature, if one is stated. */
        COLD,
        /** Hot; from a temperature on, if one is stated. */
        HOT;

        /**
         * The condition in words.
         *
         * @return "wet", "cold" or "hot"
         */
        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Starts a condition.
     *
     * @param kind wet, cold or hot
     * @return a builder
     */
    public static Builder builder(Kind kind) {
        return new Builder(Violations.required("condition", kind));
    }

    /**
     * Which condition this is.
     *
     * @return wet, cold or hot
     */
    public Kind kind() {
        return kind;
    }

    /**
     * Lowest deployment force under the condition.
     *
     * @return force [N], above zero
     */
    public double clearanceForce() {
        return clearanceForce;
    }

    /**
     * Highest deployment force under the condition.
     *
     * @return force [N], not below the lowest
     */
    public double maximumForce() {
        return maximumForce;
    }

    /**
     * The temperature up to which an absorber counts as cold, or from which on it counts as hot.
     *
     * @return temperature [°C]; empty where the condition applies at every temperature
     */
    public OptionalDouble temperature() {
        return temperature == null ? OptionalDouble.empty() : OptionalDouble.of(temperature);
    }

    /**
     * Where the forces come from.
     *
     * @return the source as stated, not blank
     */
    public String source() {
        return source;
    }

    /**
     * Tells whether an absorber may be in this condition in an arrest.
     *
     * @param value temperature of the arrest [°C]
     * @return true for wet, for cold at or below its temperature, for hot at or above it, and where none is stated
     * @throws org.lifeline.base.InvalidInputException if it is no temperature
     */
    public boolean appliesAt(double value) {
        PlausibleRange.TEMPERATURE.required("temperature", value);
        return temperature == null || (kind == Kind.COLD ? value <= temperature : value >= temperature);
    }

    /** The same with both forces multiplied by a factor [-]. */
    AbsorberCondition scaled(double factor) {
        Builder b = builder(kind)
                .clearanceForce(clearanceForce * factor)
                .maximumForce(maximumForce * factor)
                .source(source);
        b.temperature = temperature;
        return b.build();
    }

    /**
     * The conditions under which absorbers deploy, in words.
     *
     * @param byWorker the condition of each worker who has one other than dry, by the name that is to be shown
     * @param fallers how many fall
     * @return for example "cold", or "A cold, B wet" where those who fall differ; empty if all are dry
     */
    public static String words(Map<String, AbsorberCondition> byWorker, int fallers) {
        Violations.required("byWorker", byWorker);
        boolean alike = byWorker.size() == fallers
                && byWorker.values().stream()
                                .map(AbsorberCondition::kind)
                                .distinct()
                                .count()
                        == 1;
        return alike
                ? byWorker.values().iterator().next().kind().label()
                : byWorker.entrySet().stream()
                        .map(e -> e.getKey() + " " + e.getValue().kind().label())
                        .collect(Collectors.joining(", "));
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for the same condition with the same forces, temperature and source
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof AbsorberCondition c
                && kind == c.kind
                && Double.compare(clearanceForce, c.clearanceForce) == 0
                && Double.compare(maximumForce, c.maximumForce) == 0
                && Objects.equals(temperature, c.temperature)
                && source.equals(c.source);
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind.name(), clearanceForce, maximumForce, temperature, source);
    }

    @Override
    public String toString() {
        return kind.label() + ", " + clearanceForce + " to " + maximumForce + " N"
                + (temperature == null ? "" : (kind == Kind.COLD ? ", up to " : ", from ") + temperature + " °C") + " ("
                + source + ")";
    }

    /**
     * Collects what is known of an absorber under a condition. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private final Kind kind;
        private @Nullable Double clearanceForce;
        private @Nullable Double maximumForce;
        private @Nullable Double temperature;
        private @Nullable String source;

        private Builder(Kind kind) {
            this.kind = kind;
        }

        /**
         * Lowest deployment force under the condition.
         *
         * @param value force [N], above zero
         * @return this
         */
        public Builder clearanceForce(double value) {
            clearanceForce = value;
            return this;
        }

        /**
         * Highest deployment force under the condition.
         *
         * @param value force [N], not below the lowest
         * @return this
         */
        public Builder maximumForce(double value) {
            maximumForce = value;
            return this;
        }

        /**
         * The temperature up to which cold applies, or from which on hot applies; at every temperature unless set.
         *
         * @param value temperature [°C], that of the line in an arrest
         * @return this
         */
        public Builder temperature(double value) {
            // No minus zero: it would make another condition of the same one.
            temperature = value + 0.0;
            return this;
        }

        /**
         * Where the forces come from: a test report, the manufacturer's data, an assumption.
         *
         * @param value the source, not blank
         * @return this
         */
        public Builder source(String value) {
            source = value;
            return this;
        }

        /**
         * Checks everything and makes the condition.
         *
         * @return the condition
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public AbsorberCondition build() {
            Violations v = new Violations();
            double low = force(v, "clearanceForce", clearanceForce);
            double high = force(v, "maximumForce", maximumForce);
            if (high < low) {
                v.add(Violation.of("maximumForce", GivenValue.number(high, "N"), InputRule.MAXIMUM_BELOW_CLEARANCE)
                        .allowing(AllowedRange.atLeast(low)));
            }
            if (temperature != null) {
                PlausibleRange.TEMPERATURE.check(v, "temperature", temperature);
                v.require(
                        kind != Kind.WET,
                        "temperature",
                        GivenValue.number(temperature, "°C"),
                        InputRule.WET_AT_ANY_TEMPERATURE);
            }
            if (source == null) {
                v.missing("source");
            } else {
                v.require(!source.isBlank(), "source", GivenValue.text(source), InputRule.FORCES_WITHOUT_SOURCE);
            }
            v.throwIfAny();
            return new AbsorberCondition(this);
        }

        private static double force(Violations v, String path, @Nullable Double value) {
            if (value == null) {
                v.missing(path);
                return Double.NaN;
            }
            if (value > 0) {
                PlausibleRange.ARREST_FORCE.check(v, path, value);
            } else {
                v.positive(path, value, "N");
            }
            return value;
        }
    }
}
