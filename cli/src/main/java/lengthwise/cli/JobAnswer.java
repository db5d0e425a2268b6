package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import lengthwise.job.JobException;
import lengthwise.job.JobFile;
import lengthwise.job.JobReader;
import org.jspecify.annotations.Nullable;

/** What a command that reads a job file makes of it. */
@FunctionalInterface
interface JobAnswer {
    ExitCode of(JobFile file) throws JobException, IOException, Estimating.RejectedException;

    /** Reads the job and answers; what is wrong with it, or with a marker made for it, is one line. */
    static int to(Path job, PrintWriter err, JobAnswer answer) throws IOException {
        try {
            return answer.of(JobReader.read(job)).number();
        } catch (JobException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        } catch (Estimating.RejectedException rejected) {
            err.println("lengthwise: " + rejected.getMessage());
            return ExitCode.CHECK_FAILED.number();
        }
    }

    /**
     * Refuses what is no job file, and a file where a folder is wanted.
     *
     * @param what takes a job file, at the beginning of a sentence
     */
    static void refuseWrongFiles(String what, Path job, @Nullable Path out, SearchOptions searching) {
        String name = job.toString().toLowerCase(Locale.ROOT);
        if (!name.endsWith(".yaml") && !name.endsWith(".yml")) {
            throw searching.wrong(
                    what + " takes a job file (.yaml); lengthwise marker DRAWING --width \"150 cm\" writes one.");
        }
        if (out != null && Files.exists(out) && !Files.isDirectory(out)) {
            throw searching.wrong("--out " + out + " is a file; name a folder.");
        }
    }
}
