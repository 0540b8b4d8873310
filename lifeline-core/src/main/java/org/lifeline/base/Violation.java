package org.lifeline.base;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * One thing that is wrong with an input: where, what was given, and the rule that it breaks, for people and for programs.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Violation implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Where, in the words of the input. */
    private final String path;

    /** What was given. */
    private final GivenValue given;

    /** The rule that it breaks. */
    private final ViolationCode code;

    /** What stands in the sentence of the rule for {0}, {1} …. */
    private final String[] arguments;

    /** The numbers that the rule allows; null where it is no rule about numbers. */
    private final @Nullable AllowedRange allowed;

    private Violation(
            String path, GivenValue given, ViolationCode code, String[] arguments, @Nullable AllowedRange allowed) {
        this.path = path;
        this.given = given;
        this.code = code;
        this.arguments = arguments;
        this.allowed = allowed;
    }

    /**
     * A violation whose rule is stated in words of the caller's own; its code is {@link InputRule#STATED}.
     *
     * @param path the place, in the words of the input, for example {@code workers[1].mass}
     * @param value the value as given, with its unit
     * @param rule the rule that it breaks, as a sentence without subject
     */
    public Violation(String path, String value, String rule) {
        this(path, GivenValue.text(value), InputRule.STATED, new String[] {rule}, null);
    }

    /**
     * A violation of a rule.
     *
     * @param path the place: the builder's methods, for example {@code worker[1].connection}
     * @param given what was given
     * @param code the rule
     * @param arguments what stands in its sentence for <code>{0}</code>, <code>{1}</code> …
     * @return the violation
     */
    public static Violation of(String path, GivenValue given, ViolationCode code, Object... arguments) {
        String[] texts = new String[arguments.length];
        for (int i = 0; i < texts.length; i++) {
            texts[i] = String.valueOf(arguments[i]);
        }
        return new Violation(path, given, code, texts, null);
    }

    /**
     * The same with the numbers that would be allowed.
     *
     * @param range the numbers that the rule allows
     * @return the new violation
     */
    public Violation allowing(AllowedRange range) {
        return new Violation(path, given, code, arguments, range);
    }

    /**
     * The violation moved below a parent, so that a part can be checked alone and reported in its place.
     *
     * @param parent the parent's path, for example {@code workers[1]}
     * @return the same violation with the longer path
     */
    public Violation below(String parent) {
        if (parent.isEmpty()) {
            return this;
        }
        String joint = path.isEmpty() || path.startsWith("[") ? "" : ".";
        return at(parent + joint + path);
    }

    /**
     * The same violation at another place.
     *
     * @param place the path
     * @return the new violation
     */
    public Violation at(String place) {
        return new Violation(place, given, code, arguments, allowed);
    }

    /**
     * The same violation with the value as it was written.
     *
     * @param text the value as it stood in the input; number and unit stay
     * @return the new violation
     */
    public Violation written(String text) {
        GivenValue value = new GivenValue(text, given.value(), given.unit());
        return new Violation(path, value, code, arguments, allowed);
    }

    /**
     * The place.
     *
     * @return the path, in the words of the input: in the model the names of the builders' methods
     */
    public String path() {
        return path;
    }

    /**
     * The rule.
     *
     * @return the code
     */
    public ViolationCode code() {
        return code;
    }

    /**
     * The value as given.
     *
     * @return the text, with its unit
     */
    public String value() {
        return given.text();
    }

    /**
     * The value as a number.
     *
     * @return the number [unit of {@link #unit}]; empty where a text was given, nothing, or not a number
     */
    public OptionalDouble number() {
        return given.number();
    }

    /**
     * The unit of the number.
     *
     * @return for example {@code "kg"}; empty for a bare number or a text
     */
    public String unit() {
        return given.unit();
    }

    /**
     * The numbers that are allowed.
     *
     * @return the range, in {@link #unit}; empty where the rule is not one about numbers
     */
    public Optional<AllowedRange> allowed() {
        return Optional.ofNullable(allowed);
    }

    /**
     * What stands in the sentence of the rule.
     *
     * @return the texts for <code>{0}</code>, <code>{1}</code> …; unmodifiable
     */
    public List<String> arguments() {
        return List.of(arguments);
    }

    /**
     * The rule in English.
     *
     * @return a sentence without subject, for example {@code "must be a finite number above zero"}
     */
    public String rule() {
        return filled(code.english());
    }

    /**
     * The rule in another language.
     *
     * @param texts the sentences of the language
     * @return the sentence, with what belongs to the case put in
     */
    public String rule(MessageTexts texts) {
        return filled(texts.sentence(code));
    }

    /** Puts the arguments into a sentence; braces around anything but the number of an argument stay. */
    private String filled(String sentence) {
        StringBuilder out = new StringBuilder();
        int i = 0;
        while (i < sentence.length()) {
            int close = sentence.charAt(i) == '{' ? sentence.indexOf('}', i) : -1;
            int number = close == i + 2 ? sentence.charAt(i + 1) - '0' : -1;
            if (number >= 0 && number < arguments.length) {
                out.append(arguments[number]);
                i = close + 1;
            } else {
                out.append(sentence.charAt(i));
                i++;
            }
        }
        return out.toString();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Violation v
                && path.equals(v.path)
                && given.equals(v.given)
                && code.equals(v.code)
                && Arrays.equals(arguments, v.arguments)
                && Objects.equals(allowed, v.allowed);
    }

    @Override
    public int hashCode() {
        return Objects.hash(path, given, code.key(), Arrays.hashCode(arguments), allowed);
    }

    @Override
    public String toString() {
        return path + ": " + value() + ": " + rule();
    }
}
