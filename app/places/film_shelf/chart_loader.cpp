// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/chart_loader.h"

#include "app/theme/type.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QPluginLoader>

namespace holdfast::app {

namespace {

QString& otherFolder() {
    static QString folder;
    return folder;
}

QStringList moduleFolders() {
    if (!otherFolder().isEmpty())
        return {otherFolder()};
    // Where it was built, and where it is installed.
    const QString program = QCoreApplication::applicationDirPath();
    QStringList folders{program, QDir(program).filePath(QStringLiteral(HOLDFAST_INSTALLED_CHART_FOLDER))};
#ifdef HOLDFAST_CHART_FOLDER
    folders << QStringLiteral(HOLDFAST_CHART_FOLDER); // tests run from another folder
#endif
    return folders;
}

class ChartLoaderWords {
    Q_DECLARE_TR_FUNCTIONS(ChartLoaderWords)
};

} // namespace

ClimateChart* makeClimateChart(QWidget* parent, QString& reason) {
    for (const QString& folder : moduleFolders()) {
        const QString path = QDir(folder).filePath(QStringLiteral("holdfast_climate_chart.so"));
        if (!QFileInfo::exists(path)) {
            reason = ChartLoaderWords::tr("%1 is missing").arg(path);
            continue;
        }
        QPluginLoader loader(path);
        if (auto* maker = qobject_cast<ClimateChartMaker*>(loader.instance()))
            return maker->make(parent);
        reason = loader.errorString();
    }
    return nullptr;
}

ChartDress chartDress() {
    return {tokens(), fontOf(Type::Small), fontOf(Type::SmallStrong)};
}

void setChartFolder(const QString& folder) {
    otherFolder() = folder;
}

} // namespace holdfast::app
