package org.lifeline.housefixture.bad.base;

import org.lifeline.housefixture.bad.model.Beam;

/** Stands on what stands on it: a look upwards and a cycle. */
public final class Foundation {
    private Foundation() {}

    public static Beam beam() {
        return new Beam();
    }
}
