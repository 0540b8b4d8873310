package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;

class RootsTest {
    @Test
    void bracketedRoots() {
        assertThat(Roots.bracketed("√2", x -> x * x - 2, 0, 2)).isCloseTo(Math.sqrt(2), within(1e-15));
        // Dottie's number, the root of cos x = x (recalled): 0.739085133215160641…
        assertThat(Roots.bracketed("cos", x -> Math.cos(x) - x, 0, 1)).isCloseTo(0.7390851332151607, within(2e-16));
        assertThat(Roots.bracketed("falling", x -> 1 - x * x * x, 0.5, 3)).isCloseTo(1, within(4e-15));
    }

    @Test
    void rootsOfEveryScale() {
        for (double root = 1e-12; root < 1e13; root *= 10) {
            double want = root;
            double have = Roots.bracketed("scale", x -> x * x * x - want * want * want, 0.1 * root, 30 * root);
            assertThat(have).isCloseTo(root, within(4e-14 * root));
        }
    }

    @Test
    void aRootAtAnEnd() {
        assertThat(Roots.bracketed("end", x -> x - 3, 3, 5)).isEqualTo(3);
        assertThat(Roots.bracketed("end", x -> x - 5, 3, 5)).isEqualTo(5);
    }

    @Test
    void noChangeOfSign() {
        NoEquilibriumException e = catchThrowableOfType(
                NoEquilibriumException.class, () -> Roots.bracketed("a thing", x -> x * x + 4, -1, 2));
        assertThat(e.where()).isEqualTo("a thing");
        assertThat(e.convergence().residual()).isEqualTo(5);
        assertThat(e).hasCauseInstanceOf(org.apache.commons.math3.exception.NoBracketingException.class);
    }

    @Test
    void notANumber() {
        assertThatThrownBy(() -> Roots.bracketed("nan", x -> Double.NaN, 0, 1))
                .isInstanceOf(NoEquilibriumException.class);
    }

    @Test
    void minima() {
        assertThat(Roots.minimum(x -> (x - 0.7) * (x - 0.7), 0, 2)).isCloseTo(0.7, within(1e-7));
        // Least tension of a level inextensible span: λ sinh λ = cosh λ, λ = 1.19967864… (recalled).
        assertThat(Roots.minimum(l -> Math.cosh(l) / l, 1e-6, 6)).isCloseTo(1.199678640257734, within(1e-6));
    }
}
