package org.lifeline.housefixture.bad.attic;

import org.junit.jupiter.api.Assertions;

/** Lives on no floor, and stands on a library that is not in the list. */
public final class Squatter {
    @Override
    public String toString() {
        return Assertions.class.getName();
    }
}
