package org.lifeline.analysis;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Violations;

/**
 * One fall at both limits of its attachment: the connector runs, or it is held. Each quantity is governed by the worse.
 *
 * <p>An attachment that grips the cable, or pulls on a support, knows one limit only. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class AttachmentLimits {
    private final Map<AttachmentLimit, ArrestResult> arrests = new EnumMap<>(AttachmentLimit.class);

    AttachmentLimits(ArrestResult running, ArrestResult held) {
        arrests.put(AttachmentLimit.RUNNING, running);
        arrests.put(AttachmentLimit.HELD, held);
    }

    /**
     * A quantity at its worse limit.
     *
     * <p>Immutable and thread-safe.
     *
     * @param value the value [unit of the quantity]
     * @param limit the limit that it belongs to
     * @param arrest the arrest that it belongs to
     * @since 1.0.0
     */
    public record Governing(double value, AttachmentLimit limit, ArrestResult arrest) {}

    /**
     * The arrest at one limit.
     *
     * @param limit the limit
     * @return the arrest; the same at both limits where the attachment knows one only
     */
    public ArrestResult at(AttachmentLimit limit) {
        Violations.required("limit", limit);
        ArrestResult arrest = arrests.get(limit);
        if (arrest == null) {
            throw new IllegalStateException("unreachable: both limits are computed");
        }
        return arrest;
    }

    /**
     * The larger value of a quantity: for loads and for distances, each by itself.
     *
     * @param quantity what is read off an arrest, larger is worse
     * @return the larger value, and of which limit it is; the running one when both are the same
     */
    public Governing largest(ToDoubleFunction<ArrestResult> quantity) {
        Violations.required("quantity", quantity);
        double running = quantity.applyAsDouble(at(AttachmentLimit.RUNNING));
        double held = quantity.applyAsDouble(at(AttachmentLimit.HELD));
        AttachmentLimit limit = held > running ? AttachmentLimit.HELD : AttachmentLimit.RUNNING;
        return new Governing(Math.max(running, held), limit, at(limit));
    }

    /**
     * The larger force on a support.
     *
     * @param id the support
     * @return force [N] and its limit
     * @throws IllegalArgumentException if there is no such support
     */
    public Governing anchorLoad(String id) {
        return largest(r -> r.anchorLoad(id));
    }

    /**
     * The larger tension in the cable.
     *
     * @return tension [N] and its limit
     */
    public Governing maximumTension() {
        return largest(ArrestResult::maximumTension);
    }

    /**
     * The larger arrest force on a worker.
     *
     * @return force [N] and its limit
     */
    public Governing arrestForce() {
        return largest(ArrestResult::arrestForce);
    }

    /**
     * The larger total fall distance.
     *
     * @return distance [m] and its limit
     */
    public Governing totalFallDistance() {
        return largest(ArrestResult::totalFallDistance);
    }

    /**
     * The larger clearance required below the line.
     *
     * @return distance [m] and its limit
     */
    public Governing requiredBelowLine() {
        return largest(r -> r.clearance().requiredBelowLine());
    }
}
