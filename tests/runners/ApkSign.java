import com.android.apksig.ApkSigner;
import java.io.FileInputStream;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.X509Certificate;
import java.util.List;

/** ApkSign IN.apk OUT.apk MIN-SDK: aligns (native libraries to pages of 16 KB) and signs, with the key of the environment. */
class ApkSign {
    public static void main(String[] arguments) throws Exception {
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (FileInputStream in = new FileInputStream(System.getenv("RESTWATER_KEYSTORE"))) {
            keys.load(in, System.getenv("RESTWATER_KEYSTORE_PASSWORD").toCharArray());
        }
        String alias = System.getenv("RESTWATER_KEY_ALIAS");
        PrivateKey key = (PrivateKey) keys.getKey(alias, System.getenv("RESTWATER_KEY_PASSWORD").toCharArray());
        X509Certificate certificate = (X509Certificate) keys.getCertificate(alias);
        if (key == null || certificate == null) throw new IllegalArgumentException("the key store has no key named " + alias);
        ApkSigner.SignerConfig signer = new ApkSigner.SignerConfig.Builder("restwater", key, List.of(certificate)).build();
        new ApkSigner.Builder(List.of(signer))
                .setInputApk(Path.of(arguments[0]).toFile())
                .setOutputApk(Path.of(arguments[1]).toFile())
                .setMinSdkVersion(Integer.parseInt(arguments[2]))
                .setAlignmentPreserved(false)
                .setLibraryPageAlignmentBytes(16 * 1024)
                .setV1SigningEnabled(false) // for phones older than Android 7, which this app does not run on
                .setV2SigningEnabled(true)
                .setV3SigningEnabled(true)
                .build()
                .sign();
    }
}
