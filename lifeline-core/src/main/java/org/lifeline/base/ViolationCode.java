package org.lifeline.base;

import java.io.Serializable;

/**
 * Which rule an input breaks: a stable name for programs, and the sentence for people. Names do not change within a major
 * version; sentences may.
 *
 * <p>The rules of the library are {@link InputRule} and {@link PlausibleRange}; readers of files add their own.
 * Implementations are immutable and thread-safe.
 *
 * @since 1.0.0
 */
public interface ViolationCode extends Serializable {
    /**
     * The name of the rule, unique over all codes.
     *
     * @return for example {@code "MISSING"}; letters, digits and underscores
     */
    String key();

    /**
     * The rule in English, as a sentence without subject, in which <code>{0}</code>, <code>{1}</code> … stand for what
     * belongs to the case.
     *
     * @return for example <code>"must be a span from 1 to {0}"</code>
     */
    String english();
}
