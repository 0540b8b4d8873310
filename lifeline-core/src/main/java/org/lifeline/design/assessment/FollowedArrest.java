package org.lifeline.design.assessment;

import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.FallCase;

/**
 * An arrest that was followed in time.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class FollowedArrest {
    private final FallCase fallCase;
    private final ArrestResult arrest;
    private final boolean accurate;

    FollowedArrest(FallCase fallCase, ArrestResult arrest, boolean accurate) {
        this.fallCase = fallCase;
        this.arrest = arrest;
        this.accurate = accurate;
    }

    /**
     * The case.
     *
     * @return fall, place, temperature, side
     */
    public FallCase fallCase() {
        return fallCase;
    }

    /**
     * The arrest: its peaks are those of the first catch.
     *
     * @return the arrest, its method the transient one
     */
    public ArrestResult arrest() {
        return arrest;
    }

    /**
     * Tells whether the meshes agreed to the accuracy that was asked for.
     *
     * @return true if they did
     */
    public boolean accurate() {
        return accurate;
    }

    ComputedCase computed() {
        return new ComputedCase(fallCase, arrest);
    }
}
