package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a refusal consists of comes out of another process as it went in. */
class SerializedValuesTest {
    private static Object copy(Object original) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(original);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }

    static List<Object> values() {
        return List.of(
                AllowedRange.finite(),
                AllowedRange.above(0).upTo(1),
                new AllowedRange.Bound(Double.NEGATIVE_INFINITY, false),
                GivenValue.missing(),
                GivenValue.number(Double.NaN, "kN"),
                GivenValue.countOf(3, "corners"),
                new Convergence(17, 3e-5, 1e-11),
                InputRule.BLANK,
                PlausibleRange.GRAVITY,
                Direction.DOWN,
                new Violation("a.b", "x", "must be y"),
                Violation.of("span", GivenValue.count(9), InputRule.NO_SUCH_SPAN, 3)
                        .allowing(AllowedRange.within(Interval.of(1, 3))));
    }

    @ParameterizedTest
    @MethodSource("values")
    void aValueIsTheSameAfterwards(Object value) throws IOException, ClassNotFoundException {
        assertThat(copy(value)).isEqualTo(value).hasSameHashCodeAs(value).hasToString(value.toString());
    }

    @Test
    void aViolationCanStillBeFilledAndMoved() throws IOException, ClassNotFoundException {
        Violation v = (Violation) copy(Violation.of("span", GivenValue.count(9), InputRule.NO_SUCH_SPAN, 3));
        assertThat(v.below("fall[0].at")).hasToString("fall[0].at.span: 9: must be a span from 1 to 3");
        assertThat(v.rule(code -> code.key() + " {0}")).isEqualTo("NO_SUCH_SPAN 3");
    }

    @Test
    void anExceptionKeepsItsMessageAndItsViolations() throws IOException, ClassNotFoundException {
        InvalidInputException e = new InvalidInputException(List.of(
                new Violation("a", "1", "must be 2"),
                Violation.of("b", GivenValue.number(-1, "m"), InputRule.NEGATIVE)));
        InvalidInputException back = (InvalidInputException) copy(e);
        assertThat(back).hasMessage("a: 1: must be 2; b: -1.0 m: must be a finite number that is not negative");
        assertThat(back.violations()).isEqualTo(e.violations());
    }

    @Test
    void whereAnIterationWasLostIsKept() throws IOException, ClassNotFoundException {
        NoEquilibriumException e = new NoEquilibriumException(
                "span 2", new NoEquilibriumException.Reached(0.5, 3000), new Convergence(12, 0.5, 1e-10));
        NoEquilibriumException back = (NoEquilibriumException) copy(e);
        assertThat(back).hasMessage(e.getMessage());
        assertThat(back.where()).isEqualTo("span 2");
        assertThat(back.loadFactor()).isEqualTo(0.5);
        assertThat(back.load()).hasValue(3000);
        assertThat(back.convergence()).isEqualTo(e.convergence());
    }
}
