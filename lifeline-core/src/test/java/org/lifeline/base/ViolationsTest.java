package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.junit.jupiter.api.Test;

class ViolationsTest {
    private static final double NAN = Double.NaN;
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @Test
    void nothingFoundNothingThrown() {
        Violations v = new Violations()
                .positive("a", Double.MIN_VALUE, "N")
                .notNegative("b", 0, "m")
                .finite("c", -1e300, "")
                .require(true, "d", "x", "rule");
        assertThat(v.isEmpty()).isTrue();
        assertThat(v.list()).isEmpty();
        assertThatCode(v::throwIfAny).doesNotThrowAnyException();
    }

    @Test
    void allFoundAllThrown() {
        Violations v = new Violations();
        for (double bad : new double[] {0, -1, NAN, INFINITE, -INFINITE}) {
            v.positive("p", bad, "N");
        }
        for (double bad : new double[] {-1, NAN, INFINITE, -INFINITE}) {
            v.notNegative("q", bad, "m");
        }
        for (double bad : new double[] {NAN, INFINITE, -INFINITE}) {
            v.finite("r", bad, "");
        }
        v.require(false, "s", "blue", "must be red");
        v.add("t", "1 N", "must be two");
        v.add(new Violation("u", "x", "y"));
        assertThat(v.isEmpty()).isFalse();
        assertThat(v.list()).hasSize(15);
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, v::throwIfAny);
        assertThat(e.violations()).isEqualTo(v.list());
        assertThat(e)
                .hasMessageStartingWith("p: 0.0 N: must be a finite number above zero; p: -1.0 N: ")
                .hasMessageContaining("q: -1.0 m: must be a finite number that is not negative; q: NaN m")
                .hasMessageContaining("r: NaN: must be a finite number; r: Infinity: must")
                .hasMessageEndingWith("s: blue: must be red; t: 1 N: must be two; u: x: y");
    }

    @Test
    void theListIsACopy() {
        Violations v = new Violations();
        List<Violation> before = v.list();
        v.add("a", "b", "c");
        assertThat(before).isEmpty();
        assertThatThrownBy(() -> v.list().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void numbersAreShownWithTheirUnit() {
        assertThat(Violations.show(-3, "kg")).isEqualTo("-3.0 kg");
        assertThat(Violations.show(0.12, "")).isEqualTo("0.12");
    }

    @Test
    void aViolationMovesBelowItsParent() {
        Violation v = new Violation("mass", "-1 kg", "must be above zero");
        assertThat(v.below("workers[1]").path()).isEqualTo("workers[1].mass");
        assertThat(v.below("")).isSameAs(v);
        assertThat(new Violation("", "x", "y").below("cable").path()).isEqualTo("cable");
        assertThat(new Violation("[2]", "x", "y").below("supports").path()).isEqualTo("supports[2]");
        assertThat(v.below("a").below("b")).hasToString("b.a.mass: -1 kg: must be above zero");
    }

    @Test
    void exceptionsKeepTheirNumbers() {
        Convergence c = new Convergence(17, 3e-5, 1e-11);
        NoEquilibriumException e = new NoEquilibriumException("span 3", 0.25, c);
        assertThat(e.where()).isEqualTo("span 3");
        assertThat(e.loadFactor()).isEqualTo(0.25);
        assertThat(e.convergence()).isEqualTo(c);
        assertThat(e)
                .hasMessage("no equilibrium: span 3; last load factor 0.25, residual 3.0E-5 (tolerance 1.0E-11)"
                        + " after 17 iterations");
        assertThat(c.then(new Convergence(5, 1e-12, 1e-9))).isEqualTo(new Convergence(22, 3e-5, 1e-9));
    }
}
