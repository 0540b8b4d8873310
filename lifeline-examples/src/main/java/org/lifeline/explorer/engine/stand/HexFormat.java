package org.lifeline.explorer.engine.stand;

/** Stands in for {@link java.util.HexFormat}: bytes as lower-case hexadecimal. */
public final class HexFormat {
    private static final String DIGITS = "0123456789abcdef";

    private HexFormat() {}

    /**
     * The format.
     *
     * @return lower-case digits without anything between them
     */
    public static HexFormat of() {
        return new HexFormat();
    }

    /**
     * Bytes as text.
     *
     * @param bytes the bytes
     * @return two digits for each
     */
    public String formatHex(byte[] bytes) {
        StringBuilder out = new StringBuilder();
        for (byte each : bytes) {
            out.append(DIGITS.charAt((each >> 4) & 15)).append(DIGITS.charAt(each & 15));
        }
        return out.toString();
    }
}
