package org.lifeline.base.canonical;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.lifeline.base.Violations;

/**
 * SHA-256 (FIPS 180-4) of a canonical form: equal for equal values, on every machine and Java version, and, as far as anybody
 * knows, different for different ones.
 *
 * <p>Hashed are, in the order given and big-endian: the text {@code org.lifeline.canonical}, the version, the kind, the number
 * of entries, and of each entry its path, its unit, and either a byte 1 and the 64 bits of the number (IEEE 754 binary64, the one
 * quiet NaN 7ff8000000000000 for all), or a byte 0 and the text. A text is its length in bytes (32 bits) and its UTF-8. The
 * version is raised whenever the bytes of an unchanged value would change. Immutable and thread-safe.
 *
 * @param version version of the canonical form
 * @param sha256 the hash, 64 hexadecimal digits in lower case
 * @since 1.0.0
 */
public record Fingerprint(int version, String sha256) {
    /** The version that this library writes. */
    public static final int VERSION = 1;

    private static final String FAMILY = "org.lifeline.canonical";

    /**
     * The fingerprint of a form.
     *
     * @param form the form
     * @return the fingerprint
     */
    static Fingerprint of(CanonicalForm form) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            text(out, FAMILY);
            out.writeInt(VERSION);
            text(out, form.kind());
            out.writeInt(form.entries().size());
            for (CanonicalForm.Entry each : form.entries()) {
                text(out, each.path());
                text(out, each.unit());
                out.writeByte(each.isNumber() ? 1 : 0);
                if (each.isNumber()) {
                    out.writeLong(Double.doubleToLongBits(each.number()));
                } else {
                    text(out, each.text());
                }
            }
        } catch (IOException e) {
            throw new IllegalStateException("an array in memory takes every byte", e);
        }
        return hashed(bytes.toByteArray());
    }

    /**
     * One fingerprint for several values together, as for a line, a fall and the analysis of both.
     *
     * @param parts the values, in an order that the caller keeps; at least one
     * @return the fingerprint of their fingerprints
     * @throws org.lifeline.base.InvalidInputException if there is none
     */
    public static Fingerprint combined(List<? extends Canonical> parts) {
        Violations.requiredAll("parts", parts);
        new Violations().atLeast("parts", parts.size(), 1).throwIfAny();
        CanonicalForm.Builder b = CanonicalForm.builder("combined");
        for (int i = 0; i < parts.size(); i++) {
            b.text("part[" + i + "]", parts.get(i).fingerprint().toString());
        }
        return b.build().fingerprint();
    }

    private static void text(DataOutputStream out, String text) throws IOException {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(utf8.length);
        out.write(utf8);
    }

    private static Fingerprint hashed(byte[] bytes) {
        try {
            return new Fingerprint(
                    VERSION,
                    HexFormat.of()
                            .formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /**
     * The fingerprint as it is stored.
     *
     * @return version, colon, hash: {@code "1:9f86d0…"}
     */
    @Override
    public String toString() {
        return version + ":" + sha256;
    }
}
