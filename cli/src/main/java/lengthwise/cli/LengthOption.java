package lengthwise.cli;

import java.math.BigDecimal;
import lengthwise.job.JobException;
import lengthwise.job.LengthText;
import lengthwise.model.Length;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Reads a length given on the command line. */
final class LengthOption {
    private LengthOption() {}

    /**
     * Returns the length.
     *
     * @throws ParameterException if the text is no length, or it is not from {@code least} to {@code most}
     */
    static Length parse(CommandSpec spec, String option, String text, Length least, Length most) {
        try {
            Length length = LengthText.parse(text);
            if (length.compareTo(least) < 0 || length.compareTo(most) > 0) {
                throw new ParameterException(
                        spec.commandLine(),
                        "%s takes a length from %s to %s mm, not %s."
                                .formatted(option, plain(least), plain(most), text));
            }
            return length;
        } catch (JobException notALength) {
            throw new ParameterException(spec.commandLine(), option + ": " + notALength.getMessage() + ".", notALength);
        }
    }

    private static String plain(Length length) {
        return BigDecimal.valueOf(length.micrometres(), 3).stripTrailingZeros().toPlainString();
    }
}
