package app.restwater.ui

import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.padding
import androidx.compose.material3.MaterialTheme
import androidx.compose.material3.Surface
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.unit.dp

/** What the app says about itself. */
@Composable
fun About(coreVersion: String) {
    MaterialTheme {
        Surface(Modifier.fillMaxSize()) {
            Text("Restwater $coreVersion", Modifier.padding(16.dp).testTag("about"))
        }
    }
}
