import com.android.SdkConstants;
import com.android.builder.core.ToolsRevisionUtils;
import com.android.sdklib.AndroidTargetHash;
import com.android.sdklib.AndroidVersion;

/** ApkDemands COMPILE-SDK: what the Android Gradle plugin on the class path says of the versions it works with. */
class ApkDemands {
    public static void main(String[] arguments) {
        AndroidVersion compile = new AndroidVersion(Integer.parseInt(arguments[0]), 0);
        AndroidVersion newest = ToolsRevisionUtils.MAX_RECOMMENDED_COMPILE_SDK_VERSION;
        System.out.println("gradle " + SdkConstants.GRADLE_LATEST_VERSION);
        System.out.println("ndk " + SdkConstants.NDK_DEFAULT_VERSION);
        System.out.println("platform " + AndroidTargetHash.getPlatformHashString(compile));
        System.out.println("compile-sdk " + (compile.compareTo(newest) <= 0 ? "known" : "newer than " + newest.getApiStringWithoutExtension()));
    }
}
