import RestwaterCore

/// What the small fan was read for; it changes after a tap or each minute, never each second.
struct FanKey: Equatable {
    let glass: FanGlass
    let clock: String
    let spot: String
    let latest: [String]
}

/// What the large fan was read for.
struct SceneKey: Equatable {
    let glass: FanGlass
    let view: SwimView
}

/// The pictures of the swim: requested for the size of their places, and read again when what they show may have
/// changed.
extension RestwaterState {
    /// The place of the small fan on the screen from now on, or `nil` if the layout has no room for it.
    public func placeFan(_ glass: FanGlass?) {
        guard glass != fanGlass else { return }
        fanGlass = glass
        readFan()
    }

    /// The place of the large fan on the screen from now on.
    public func placeScene(_ glass: FanGlass?) {
        guard glass != sceneGlass else { return }
        sceneGlass = glass
        readScene()
    }

    /// A tap on the large fan, in points of its canvas.
    public func aim(x: Double, y: Double) {
        guard let glass = sceneGlass else { return }
        ask({ core in try core.swimTap(glass: glass, x: x, y: y) }) { state, _ in state.refresh() }
    }

    func readFan() {
        // Without a session there is no swim to draw.
        guard let glass = fanGlass, let bank = content.bank, !bank.rods.isEmpty else {
            fanKey = nil
            if content.fan != nil { content.fan = nil }
            return
        }
        let key = FanKey(glass: glass, clock: bank.header.clock, spot: bank.spot, latest: bank.latest)
        guard key != fanKey else { return }
        fanKey = key
        let at = clock()
        ask({ core in try core.swimScene(now: at, glass: glass) }) { state, scene in state.content.fan = scene }
    }

    func readScene() {
        guard let glass = sceneGlass, let view = content.swim, content.showing == .swim else { return }
        let key = SceneKey(glass: glass, view: view)
        guard key != sceneKey else { return }
        sceneKey = key
        let at = clock()
        ask({ core in try core.swimScene(now: at, glass: glass) }) { state, scene in state.content.scene = scene }
    }
}
