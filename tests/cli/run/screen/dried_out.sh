boilback run "$BOILBACK_DATA/scenarios/dried-out.bath"
