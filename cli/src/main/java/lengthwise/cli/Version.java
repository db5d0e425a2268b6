package lengthwise.cli;

import picocli.CommandLine.IVersionProvider;

/** The version, from the jar's manifest. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {"lengthwise " + number()};
    }

    static String number() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }
}
