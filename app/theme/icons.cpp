// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/icons.h"

#include <QFile>
#include <QHash>
#include <QPainter>
#include <QPixmapCache>
#include <QSvgRenderer>

#include <algorithm>
#include <cmath>
#include <memory>

namespace holdfast::app {

namespace {

QString pathOf(const QString& name) {
    return QStringLiteral(":/icons/%1.svg").arg(name);
}

QSvgRenderer* rendererOf(const QString& name) {
    static QHash<QString, std::shared_ptr<QSvgRenderer>> renderers;
    auto found = renderers.find(name);
    if (found == renderers.end()) {
        found = renderers.insert(name, std::make_shared<QSvgRenderer>(pathOf(name)));
        Q_ASSERT_X(found.value()->isValid(), "icon", qPrintable(name));
    }
    return found.value().get();
}

} // namespace

bool hasIcon(const QString& name) {
    return QFile::exists(pathOf(name));
}

QPixmap iconPixmap(const QString& name, const QColor& ink, int size, qreal ratio) {
    const int pixels = std::max(1, static_cast<int>(std::lround(size * ratio)));
    const QString key = QStringLiteral("holdfast icon %1 %2 %3").arg(name).arg(ink.rgba(), 0, 16).arg(pixels);
    QPixmap tinted;
    if (!QPixmapCache::find(key, &tinted)) {
        tinted = QPixmap(pixels, pixels);
        tinted.fill(Qt::transparent);
        QPainter painter(&tinted);
        painter.setRenderHint(QPainter::Antialiasing);
        rendererOf(name)->render(&painter, QRectF(0, 0, pixels, pixels));
        painter.setCompositionMode(QPainter::CompositionMode_SourceIn);
        painter.fillRect(tinted.rect(), ink);
        painter.end();
        QPixmapCache::insert(key, tinted);
    }
    tinted.setDevicePixelRatio(ratio);
    return tinted;
}

void paintIcon(QPainter& painter, const QRectF& box, const QString& name, const QColor& ink) {
    const int size = static_cast<int>(std::floor(std::min(box.width(), box.height())));
    if (name.isEmpty() || size <= 0) {
        return;
    }
    const qreal ratio = painter.device()->devicePixelRatioF();
    // On whole pixels of the device, so that the lines stay as crisp as they were drawn.
    const auto snapped = [ratio](qreal at) { return std::round(at * ratio) / ratio; };
    const QPointF at(snapped(box.center().x() - size / 2.0), snapped(box.center().y() - size / 2.0));
    painter.drawPixmap(at, iconPixmap(name, ink, size, ratio));
}

} // namespace holdfast::app
