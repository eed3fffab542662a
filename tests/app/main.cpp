// SPDX-License-Identifier: GPL-3.0-or-later
// The tests of widgets: one QApplication for all of them, without a display unless HOLDFAST_TEST_DISPLAY says
// that there is one to use.

#include "app/desk/window_language.h"
#include "app/theme/tokens.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QStandardPaths>

int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    if (!qEnvironmentVariableIsSet("HOLDFAST_TEST_DISPLAY"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    // What a person has in their own folders is neither read nor written.
    QStandardPaths::setTestModeEnabled(true);
    // Nor does any printer of theirs print.
    qputenv("CUPS_SERVER", "/no/print/service");
    QApplication application(argc, argv);
    holdfast::app::setWindowLanguage();
    // Each share of the tests that runs at the same time has settings of its own.
    QApplication::setApplicationName(QStringLiteral("holdfast-tests") +
                                     qEnvironmentVariable("GTEST_SHARD_INDEX"));
    // What an earlier run chose for this machine is no concern of this one.
    QFile::remove(QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation) +
                  QStringLiteral("/machine.ini"));
    holdfast::app::setLight(application, holdfast::app::Light::Day);
    return RUN_ALL_TESTS();
}
