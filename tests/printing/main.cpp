// SPDX-License-Identifier: GPL-3.0-or-later
// The tests of printing: a real print service, started before anything asks for printers.

#include "app/desk/window_language.h"
#include "app/theme/tokens.h"
#include "tests/printing/print_service.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QStandardPaths>

int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    holdfast::app::setWindowLanguage();
    QApplication::setApplicationName(QStringLiteral("holdfast-tests"));
    // What an earlier run chose for this machine is no concern of this one.
    QFile::remove(QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation) +
                  QStringLiteral("/machine.ini"));
    holdfast::app::setLight(application, holdfast::app::Light::Day);
    holdfast::app::test::PrintService service;
    return RUN_ALL_TESTS();
}
