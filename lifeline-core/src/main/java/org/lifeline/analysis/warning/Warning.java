package org.lifeline.analysis.warning;

import java.util.Locale;

/**
 * A result goes beyond what it is valid for, or beyond what something holds. It is no violation of the input: the numbers
 * are those of the model, and somebody has to judge them.
 *
 * <p>Immutable and thread-safe.
 *
 * @param code what it is about
 * @param where the part: a support, a worker, a span, the cable
 * @param value what was found [unit of the code]
 * @param limit what it is set against [unit of the code]
 */
public record Warning(Code code, String where, double value, double limit) {

    /** The kinds of warning. */
    public enum Code {
        /** The cable stretches by more than its stiffness is taken to hold for. */
        CABLE_STRAIN("-", "the strain is beyond what the stiffness is taken to hold for"),
        /** The cable is stretched beyond the last point of its load–elongation curve. */
        CABLE_CURVE("N", "the tension is beyond the last point of the load–elongation curve"),
        /** The cable hangs steeper than a span may climb. */
        CABLE_SLOPE("°", "the cable is steeper than a span may be"),
        /** The tension is more than cable and terminations hold. */
        CABLE_STRENGTH("N", "the tension exceeds what cable and terminations hold"),
        /** The load on an anchor is more than its stated capacity. */
        ANCHOR_CAPACITY("N", "the load exceeds the stated capacity of the anchor"),
        /** A connecting subsystem is used up and has hit its stop. */
        BOTTOMED_OUT("m", "the connecting subsystem is used up: force and distance go beyond what it is made for"),
        /** An in-line absorber is used up. */
        INLINE_BOTTOMED_OUT("m", "the in-line absorber is used up"),
        /** A free-running attachment runs far; held, it may load supports and cable more. */
        ATTACHMENT_RUNS("m", "the attachment runs along the cable: held at its place it may load the supports more"),
        /** Several unequal workers fall together: force and distance are bounds, not the answer of a balance. */
        UNEQUAL_FALLERS(
                "-", "workers that fall together are unequal: forces and distances are bounds on the safe side");

        private final String unit;
        private final String text;

        Code(String unit, String text) {
            this.unit = unit;
            this.text = text;
        }

        /**
         * Unit of value and limit.
         *
         * @return the unit in SI; "°" for an angle, "-" for a ratio
         */
        public String unit() {
            return unit;
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
     * Unit of value and limit.
     *
     * @return the unit
     */
    public String unit() {
        return code.unit();
    }

    /**
     * The warning in words, in SI.
     *
     * @return for example "post 1: the load exceeds the stated capacity of the anchor: 17012.4 N for 16000.0 N"
     */
    public String text() {
        String u = unit().equals("-") ? "" : " " + unit();
        return String.format(Locale.ROOT, "%s: %s: %.6g%s for %.6g%s", where, code.text(), value, u, limit, u);
    }

    @Override
    public String toString() {
        return text();
    }
}
