// SPDX-License-Identifier: GPL-3.0-or-later
// The tests of the installed program and its package. Pictures are drawn without a display.

#include <gtest/gtest.h>

#include <QGuiApplication>
#include <QStandardPaths>

int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    // What a person has in their own folders is neither read nor written.
    QStandardPaths::setTestModeEnabled(true);
    const QGuiApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
