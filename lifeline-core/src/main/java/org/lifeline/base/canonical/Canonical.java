package org.lifeline.base.canonical;

import java.util.List;

/**
 * A value that can say what it consists of. Two values of one class are equal exactly when their canonical forms are, as far
 * as the class defines equality at all.
 *
 * @since 1.0.0
 */
public interface Canonical {
    /**
     * What the value consists of.
     *
     * @return names with numbers and texts, in a fixed order
     */
    CanonicalForm canonicalForm();

    /**
     * A fingerprint that is the same on every machine for equal values.
     *
     * @return the fingerprint of the canonical form
     */
    default Fingerprint fingerprint() {
        return canonicalForm().fingerprint();
    }

    /**
     * What another value has that differs from this one.
     *
     * @param other the value to compare with
     * @return the differences, in the order of this value and then of the other one; empty for equal values; unmodifiable
     */
    default List<Difference> differences(Canonical other) {
        return Difference.between(canonicalForm(), other.canonicalForm());
    }
}
