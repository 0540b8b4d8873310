package org.lifeline.analysis.warning;

import java.util.Locale;
import org.lifeline.base.Violations;
import org.lifeline.base.unit.SignificantDigits;

/**
 * Something that a reader must not overlook: a result goes beyond what it is valid for, or beyond what something holds, or
 * rests on less than was asked for. It is no violation of the input: the numbers are those of the model, and somebody has to
 * judge them.
 *
 * <p>Immutable and thread-safe.
 *
 * @param code what kind of warning it is
 * @param subject what it is about: a support, a worker, a span, the cable, a quantity, a criterion
 * @param text the warning in words, without its subject and its numbers
 * @param place the case in which it was found; empty where it belongs to none
 * @param measured what was found, and against what
 * @since 1.0.0
 */
public record Warning(Code code, String subject, String text, String place, Measured measured) {

    /**
     * The kinds of warning.
     *
     * @since 1.0.0
     */
    public enum Code {
        /** The cable stretches by more than its stiffness is taken to hold for. */
        CABLE_STRAIN("the strain is beyond what the stiffness is taken to hold for"),
        /** The cable is stretched beyond the last point of its load–elongation curve. */
        CABLE_CURVE("the tension is beyond the last point of the load–elongation curve"),
        /** The cable hangs steeper than a span may climb. */
        CABLE_SLOPE("the cable is steeper than a span may be"),
        /** The tension is more than cable and terminations hold. */
        CABLE_STRENGTH("the tension exceeds what cable and terminations hold"),
        /** The load on an anchor is more than its stated capacity. */
        ANCHOR_CAPACITY("the load exceeds the stated capacity of the anchor"),
        /** A connecting subsystem is used up and has hit its stop. */
        BOTTOMED_OUT("the connecting subsystem is used up: force and distance go beyond what it is made for"),
        /** An in-line absorber is used up. */
        INLINE_BOTTOMED_OUT("the in-line absorber is used up"),
        /** A free-running attachment runs far; held, it may load supports and cable more. */
        ATTACHMENT_RUNS("the attachment runs along the cable: held at its place it may load the supports more"),
        /** Several unequal workers fall together: force and distance are bounds, not the answer of a balance. */
        UNEQUAL_FALLERS("workers that fall together are unequal: forces and distances are bounds on the safe side"),
        /** Somebody fell before, who hangs now, and an in-line absorber is taken as if nothing had drawn it out. */
        INLINE_DRAWN_BEFORE(
                "counts as new, but who hangs has fallen: what that drew out of it makes the next fall longer and harder"),
        /** A range of masses was computed with the same mass for all who fall together. */
        MASSES_TAKEN_ALIKE(
                "all who fall have the same mass of the range: unequal ones can be worse, and are to be stated"),
        /** A result broke a law that the independent check holds it to. */
        CHECK_FAILED("the independent check failed"),
        /** Something that was asked for could not be computed, or was left out. */
        NOT_COMPUTED("not computed"),
        /** A criterion could not be evaluated. */
        CRITERION_NOT_EVALUATED("not evaluated"),
        /** The clearance does not suffice. */
        CLEARANCE_LACKING("the clearance does not suffice"),
        /** A quantity is worse elsewhere on the line, or in time, than the stated falls give by energy balance. */
        WORSE_THAN_STATED("worse than in the stated falls"),
        /** A quantity is worse in time than by energy balance. */
        WORSE_IN_TIME("worse in time than by energy balance"),
        /** An arrest in time was not followed to the end of its first catch. */
        FIRST_CATCH_NOT_OVER("the motion was not followed to the end of the first catch"),
        /** Arrests in time did not reach the accuracy asked for. */
        MOTION_NOT_ACCURATE("not as accurate as asked for"),
        /** A criterion is met by the force as computed, and not with what the mesh of the arrest in time may hide of it. */
        MET_BUT_FOR_MESH("met as computed, not met with what the mesh may hide"),
        /** A model factor makes criteria easier to meet. */
        MODEL_FACTOR_BELOW_ONE("a model factor below 1 makes every criterion easier to meet"),
        /** The line is flat: small changes of its length change its tension much. */
        FLAT_LINE("flat line, tension over force on the line"),
        /** A span is so steep that a free attachment may run down it. */
        STEEP_SPAN("an attachment may run down the span before and during a fall");

        private final String text;

        Code(String text) {
            this.text = text;
        }

        /**
         * The name in a result file.
         *
         * @return for example {@code "cable-strength"}
         */
        public String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /**
         * What it says, without numbers.
         *
         * @return a clause
         */
        public String text() {
            return text;
        }
    }

    /**
     * A warning in the words of its code, without numbers.
     *
     * @param code what kind of warning it is
     * @param subject what it is about
     * @return the warning
     */
    public static Warning of(Code code, String subject) {
        Violations.required("code", code);
        Violations.required("subject", subject);
        return new Warning(code, subject, code.text(), "", Measured.nothing());
    }

    /**
     * The same in other words.
     *
     * @param value the words
     * @return the warning
     */
    public Warning saying(String value) {
        Violations.required("value", value);
        return new Warning(code, subject, value, place, measured);
    }

    /**
     * The same, found in a case.
     *
     * @param value the case in words
     * @return the warning
     */
    public Warning in(String value) {
        Violations.required("value", value);
        return new Warning(code, subject, text, value, measured);
    }

    /**
     * The same with its numbers.
     *
     * @param value what was found, and against what
     * @return the warning
     */
    public Warning with(Measured value) {
        Violations.required("value", value);
        return new Warning(code, subject, text, place, value);
    }

    /**
     * What was found.
     *
     * @return value [unit of the warning]; NaN where no number is at stake
     */
    public double value() {
        return measured.value();
    }

    /**
     * What it is set against.
     *
     * @return limit [unit of the warning]; NaN where there is none
     */
    public double limit() {
        return measured.limit();
    }

    /**
     * Unit of value and limit.
     *
     * @return the unit in SI; {@code "-"} for a bare number
     */
    public String unit() {
        return measured.unit();
    }

    /**
     * The warning in words, in SI.
     *
     * @return for example "post 1: the load exceeds the stated capacity of the anchor: 17012.4 N for 16000.0 N"
     */
    @Override
    public String toString() {
        String words = subject + ": " + text;
        if (Double.isNaN(value())) {
            return words;
        }
        String u = unit().equals("-") ? "" : " " + unit();
        String found = words + ": " + SignificantDigits.of(value(), 6) + u;
        return Double.isNaN(limit()) ? found : found + " for " + SignificantDigits.of(limit(), 6) + u;
    }
}
