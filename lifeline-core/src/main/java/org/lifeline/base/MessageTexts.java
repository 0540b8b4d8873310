package org.lifeline.base;

/**
 * The sentences of violations in a language. English is built in; {@link BundleTexts} takes another language from a
 * resource bundle.
 *
 * <p>Implementations are immutable and thread-safe.
 *
 * @since 1.0.0
 */
@FunctionalInterface
public interface MessageTexts {
    /**
     * The sentence of a rule, in which <code>{0}</code>, <code>{1}</code> … stand for what belongs to the case.
     *
     * @param code the rule
     * @return the sentence; where the language has none, {@linkplain ViolationCode#english() the English one}
     */
    String sentence(ViolationCode code);

    /**
     * The sentences that are built in.
     *
     * @return English; needs neither files nor reflection
     */
    static MessageTexts english() {
        return ViolationCode::english;
    }
}
