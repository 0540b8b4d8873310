package org.lifeline.model.incident;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * A further worker who may fall within the first second of a fall, at the place of the first: falls that nearly coincide.
 *
 * <p>Two loads at one place pull harder at the line than the same two apart, by a factor of about √2 where the line is taut and
 * flat; the place of the first is therefore that of the second. Immutable and thread-safe.
 *
 * @param worker id of the further worker, one of those of the design
 * @param delays times after the start of the first fall at which the second may begin, each of which is followed [s], from 0
 *     to {@link #LATEST}
 * @since 1.0.0
 */
public record SecondFall(String worker, List<Double> delays) implements Canonical {
    /** The latest start of a fall that nearly coincides with the first [s]; one that begins later is a fall in sequence. */
    public static final double LATEST = 1;

    /** Most delays [-]: each is followed at several places. */
    public static final int MOST = 20;

    /**
     * Delays that are followed where a design states none [s]. First catches last some tenths of a second, and so do the
     * rebounds of a line: steps of a tenth where it is loaded first, longer ones later.
     */
    public static final List<Double> USUAL = List.of(0.0, 0.1, 0.2, 0.3, 0.4, 0.6, 0.8, 1.0);

    /**
     * Checks the delays.
     *
     * @param worker id of the further worker
     * @param delays times after the start of the first fall [s]
     * @throws org.lifeline.base.InvalidInputException if there is no delay or more than {@link #MOST}, or one lies outside the
     *     first second or is named twice
     */
    public SecondFall {
        Violations.required("worker", worker);
        Violations.requiredAll("delays", delays);
        Violations v = new Violations();
        v.named("worker", worker);
        if (delays.isEmpty()) {
            v.add("delays", GivenValue.text("[]"), InputRule.EMPTY, "delay");
        }
        v.require(
                delays.size() <= MOST,
                "delays",
                GivenValue.countOf(delays.size(), "delays"),
                InputRule.ABOVE_MOST,
                MOST);
        Set<Double> seen = new HashSet<>();
        for (int i = 0; i < delays.size(); i++) {
            String path = "delays[" + i + "]";
            // Adding zero turns −0 into 0.
            double delay = delays.get(i) + 0.0;
            GivenValue given = GivenValue.number(delay, "s");
            v.require(delay >= 0 && delay <= LATEST, path, given, InputRule.OUTSIDE_RANGE, 0, LATEST + " s");
            v.require(seen.add(delay), path, given, InputRule.NOT_UNIQUE);
        }
        v.throwIfAny();
        delays = delays.stream().map(d -> d + 0.0).sorted().toList();
    }

    /**
     * A further worker who may fall at any time within the first second; {@link #USUAL} delays are followed.
     *
     * @param worker id of the further worker
     * @return the second fall
     */
    public static SecondFall of(String worker) {
        return new SecondFall(worker, USUAL);
    }

    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("second fall").text("worker", worker);
        for (int i = 0; i < delays.size(); i++) {
            b.number(CanonicalForm.Builder.element("delay", i), delays.get(i), "s");
        }
        return b.build();
    }
}
