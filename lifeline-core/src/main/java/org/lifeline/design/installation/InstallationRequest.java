package org.lifeline.design.installation;

import java.util.Optional;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;

/**
 * How a line is to be installed.
 *
 * <p>Immutable and thread-safe.
 *
 * @param temperatures lowest and highest temperature of the cable at which it may be tensioned [°C]
 * @param handTight tension at the first end anchor from which the tensioner takes up [N], above zero
 * @param tolerance factors on the pretension within which a reading is accepted [-], around 1
 * @param stretch constructional stretch, if one is expected
 * @since 1.0.0
 */
public record InstallationRequest(
        Interval temperatures, double handTight, Interval tolerance, Optional<ConstructionalStretch> stretch) {
    /** A cable that is drawn tight by hand [N]; common practice, no source. */
    public static final double DRAWN_BY_HAND = 100;

    /** A reading within ±10 % of the pretension is accepted [-]; common practice, no source. */
    public static final Interval WITHIN_TEN_PERCENT = Interval.of(0.9, 1.1);

    /**
     * Checks all of them.
     *
     * @param temperatures lowest and highest temperature of the cable [°C]
     * @param handTight tension from which the tensioner takes up [N]
     * @param tolerance factors on the pretension [-]
     * @param stretch constructional stretch
     */
    public InstallationRequest {
        Violations v = new Violations();
        Violations.required("temperatures", temperatures);
        Violations.required("tolerance", tolerance);
        PlausibleRange.TEMPERATURE.check(v, "temperatures[0]", temperatures.low());
        PlausibleRange.TEMPERATURE.check(v, "temperatures[1]", temperatures.high());
        PlausibleRange.TENSION.check(v, "handTight", handTight);
        v.require(
                tolerance.low() > 0 && tolerance.low() < 1 && tolerance.high() > 1,
                "tolerance",
                GivenValue.text(tolerance.toString()),
                InputRule.FACTORS_AROUND_ONE);
        v.throwIfAny();
    }

    /**
     * Tensioned between two temperatures, all else as is common: drawn by hand first, accepted within 10 %, no stretch stated.
     *
     * @param temperatures lowest and highest temperature of the cable [°C]
     * @return the request
     */
    public static InstallationRequest between(Interval temperatures) {
        return new InstallationRequest(temperatures, DRAWN_BY_HAND, WITHIN_TEN_PERCENT, Optional.empty());
    }
}
