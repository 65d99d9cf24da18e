package dropline.harness.cli;

import picocli.CommandLine.IVersionProvider;

/** The version, from the jar it was started from. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {line()};
    }

    static String line() {
        return "dropline " + number();
    }

    static String number() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "(built from sources)" : version;
    }
}
