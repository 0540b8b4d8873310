package org.lifeline.report.document;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InertText;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.model.Fall;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * How arrests and cases are named in text, tables and pictures.
 *
 * @since 1.0.0
 */
public final class CaseNames {
    private CaseNames() {}

    /**
     * Which of its two forces the connecting subsystem deploys with.
     *
     * @param side the deployment force
     * @return for example "clearance deployment force"
     */
    public static String side(DeploymentForce side) {
        return shortSide(side) + " deployment force";
    }

    /**
     * The same in one word, for tables.
     *
     * @param side the deployment force
     * @return "clearance" or "maximum"
     */
    public static String shortSide(DeploymentForce side) {
        return side == DeploymentForce.CLEARANCE ? "clearance" : "maximum";
    }

    /**
     * The conditions under which the absorbers of those who fall have the force of a side.
     *
     * @param fall the fall
     * @param side the deployment force
     * @param temperature temperature of the arrest [°C]
     * @return for example " (cold)"; empty where all have that of the dry
     */
    public static String conditions(Fall fall, DeploymentForce side, double temperature) {
        Map<String, AbsorberCondition> shown = new LinkedHashMap<>();
        fall.conditions(side, temperature).forEach((id, c) -> shown.put(InertText.name(id), c));
        return shown.isEmpty()
                ? ""
                : " (" + AbsorberCondition.words(shown, fall.fallers().size()) + ")";
    }

    /**
     * Words as the start of a sentence.
     *
     * @param text the words, not empty
     * @return the same with a capital
     */
    public static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /**
     * The name of an arrest.
     *
     * @param r the arrest
     * @param q the units
     * @return fall, temperature, deployment force
     */
    public static String name(ArrestResult r, Quantities q) {
        return InertText.name(r.fall().id()) + ", " + q.input(QuantityKind.TEMPERATURE, r.temperature()) + ", "
                + side(r.side()) + conditions(r.fall(), r.side(), r.temperature())
                + (isHeld(r.attachmentLimit()) ? ", attachment held" : "");
    }

    private static boolean isHeld(Optional<AttachmentLimit> limit) {
        return limit.equals(Optional.of(AttachmentLimit.HELD));
    }

    /**
     * The name of a case that is none of the arrests of a report.
     *
     * @param c the case
     * @param q the units
     * @return fall, place, temperature, deployment force, deviations
     */
    public static String name(FallCase c, Quantities q) {
        return InertText.name(c.fall().id()) + ", " + place(c, q) + ", "
                + q.input(QuantityKind.TEMPERATURE, c.temperature()) + ", " + side(c.side())
                + conditions(c.fall(), c.side(), c.temperature()) + deviations(c, q, ", ");
    }

    /**
     * The place of a case.
     *
     * @param c the case
     * @param q the units
     * @return span and station
     */
    public static String place(FallCase c, Quantities q) {
        return PlaceText.asResult(c.fall().place(), q);
    }

    /**
     * How a value was computed, as tables say it.
     *
     * @param method the method
     * @return "energy balance", "in time" or "rescue at rest"
     */
    public static String method(Method method) {
        return method == Method.TRANSIENT ? "in time" : method.label();
    }

    /**
     * What deviates from the design in a case.
     *
     * @param c the case
     * @param q the units
     * @param separator written in front of each deviation
     * @return the deviations; empty if there are none
     */
    public static String deviations(FallCase c, Quantities q, String separator) {
        StringBuilder b = new StringBuilder(isHeld(c.attachmentLimit()) ? separator + "attachment held" : "");
        c.later()
                .ifPresent(l -> b.append(separator)
                        .append(InertText.name(l.worker()))
                        .append(String.format(Locale.ROOT, " falls %.3f s later", l.delay())));
        c.pretensionFactor()
                .ifPresent(f -> b.append(separator).append("pretension × ").append(q.input(QuantityKind.RATIO, f)));
        c.friction().ifPresent(f -> b.append(separator).append("friction ").append(q.input(QuantityKind.RATIO, f)));
        c.mass().ifPresent(m -> b.append(separator).append("mass ").append(q.input(QuantityKind.MASS, m)));
        return b.toString();
    }

    /**
     * Numbers of arrests in words.
     *
     * @param numbers the numbers
     * @return for example "arrests 1, 4"
     */
    public static String list(List<Integer> numbers) {
        return (numbers.size() == 1 ? "arrest " : "arrests ")
                + numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
}
