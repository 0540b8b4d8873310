package org.lifeline.file.reproduce;

/**
 * A law that stored numbers must obey.
 *
 * <p>Immutable and thread-safe.
 *
 * @param where the part of the result, for example {@code arrests[2]}
 * @param law the law in words
 * @param off by how much it is missed, over its scale [-]
 * @param limit what is allowed [-]
 * @since 1.0.0
 */
public record StoredCheck(String where, String law, double off, double limit) {

    /**
     * Tells whether the law holds.
     *
     * @return true if it does; what is not a number does not
     */
    public boolean holds() {
        return off <= limit;
    }
}
