package org.lifeline.base;

import java.util.MissingResourceException;
import java.util.ResourceBundle;

/**
 * Sentences from a resource bundle whose keys are those of the rules; what it does not hold stays English. The file
 * {@code org/lifeline/base/messages.properties} holds the English sentences, as a start for another language.
 *
 * <p>The caller loads the bundle: {@code BundleTexts.of(ResourceBundle.getBundle("messages", locale))}. Immutable and
 * thread-safe.
 *
 * @since 1.0.0
 */
public final class BundleTexts implements MessageTexts {
    private final ResourceBundle bundle;

    private BundleTexts(ResourceBundle bundle) {
        this.bundle = bundle;
    }

    /**
     * Sentences from a bundle.
     *
     * @param bundle the bundle
     * @return the sentences
     */
    public static BundleTexts of(ResourceBundle bundle) {
        return new BundleTexts(Violations.required("bundle", bundle));
    }

    @Override
    public String sentence(ViolationCode code) {
        try {
            return bundle.getString(code.key());
        } catch (MissingResourceException | ClassCastException notASentence) {
            return code.english();
        }
    }
}
