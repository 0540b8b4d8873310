package org.lifeline.explorer.engine.stand;

import java.io.Serializable;
import java.util.Locale;
import org.apache.commons.math3.exception.util.Localizable;
import org.jspecify.annotations.Nullable;

/**
 * Stands in for the words of Commons Math's exceptions. The core turns these exceptions into its own, so that nobody reads
 * them, and the library's way to format them drags calendars and time zones along.
 */
public final class ExceptionContext implements Serializable {
    private static final long serialVersionUID = 1;

    /** What is wrong, as the library names it. */
    private String message = "";

    /**
     * The context of an exception.
     *
     * @param throwable the exception
     */
    public ExceptionContext(Throwable throwable) {}

    /**
     * Names what is wrong.
     *
     * @param pattern the name
     * @param arguments left out
     */
    public void addMessage(Localizable pattern, @Nullable Object... arguments) {
        message = String.valueOf(pattern);
    }

    /**
     * Leaves a value out.
     *
     * @param key its name
     * @param value the value
     */
    public void setValue(String key, @Nullable Object value) {}

    /**
     * What is wrong.
     *
     * @return the name
     */
    public String getMessage() {
        return message;
    }

    /**
     * What is wrong.
     *
     * @return the name
     */
    public String getLocalizedMessage() {
        return message;
    }

    /**
     * What is wrong.
     *
     * @param locale of no effect
     * @return the name
     */
    public String getMessage(Locale locale) {
        return message;
    }
}
