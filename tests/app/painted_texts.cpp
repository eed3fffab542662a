// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/painted_texts.h"

#include <QApplication>
#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <QWidget>

namespace holdfast::app::test {

namespace {

QString widgetWords(const QWidget& widget) {
    for (const QWidget* each = &widget; each != nullptr; each = each->parentWidget())
        if (!each->objectName().isEmpty() && !each->objectName().startsWith(QLatin1String("qt_")))
            return QLatin1String(widget.metaObject()->className()) + QStringLiteral(" in ") +
                   each->objectName();
    return QLatin1String(widget.metaObject()->className());
}

class TextEngine : public QPaintEngine {
public:
    TextEngine()
        : QPaintEngine(AllFeatures) {}

    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    Type type() const override { return User; }
    void updateState(const QPaintEngineState&) override {}
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
    void drawPath(const QPainterPath&) override {}
    void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}

    void drawTextItem(const QPointF& at, const QTextItem& item) override {
        if (m_widget == nullptr || item.text().trimmed().isEmpty())
            return;
        // Capitals and digits reach as high as the ascent less the room above them; the box is the letters'.
        const QRectF letters(at.x(), at.y() - item.ascent() * 0.7, item.width(), item.ascent() * 0.7);
        const QTransform toWidget = painter()->combinedTransform(); // a window's painter is redirected apart
        PaintedText painted{item.text(), m_widget, toWidget.mapRect(letters), {}, widgetWords(*m_widget)};
        if (painter()->hasClipping())
            painted.clip = toWidget.mapRect(painter()->clipBoundingRect());
        m_texts.push_back(painted);
    }

    void paints(QWidget* widget) { m_widget = widget; }
    std::vector<PaintedText> taken() { return std::move(m_texts); }

private:
    QWidget* m_widget = nullptr;
    std::vector<PaintedText> m_texts;
};

class TextDevice : public QPaintDevice {
public:
    explicit TextDevice(QSize size)
        : m_size(size) {}

    QPaintEngine* paintEngine() const override { return &m_engine; }
    TextEngine& engine() { return m_engine; }

protected:
    int metric(PaintDeviceMetric metric) const override {
        switch (metric) {
        case PdmWidth:
            return m_size.width();
        case PdmHeight:
            return m_size.height();
        case PdmDepth:
            return 32;
        case PdmDpiX:
        case PdmDpiY:
        case PdmPhysicalDpiX:
        case PdmPhysicalDpiY:
            return 96;
        case PdmDevicePixelRatio:
            return 1;
        default:
            return QPaintDevice::metric(metric);
        }
    }

private:
    QSize m_size;
    mutable TextEngine m_engine;
};

// Says to the engine whose turn it is to paint.
class Watch : public QObject {
public:
    explicit Watch(TextEngine& engine)
        : m_engine(engine) {}

    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() == QEvent::Paint && watched->isWidgetType())
            m_engine.paints(static_cast<QWidget*>(watched));
        return false;
    }

private:
    TextEngine& m_engine;
};

} // namespace

std::vector<PaintedText> textsPaintedBy(QWidget& window) {
    TextDevice device(window.size());
    Watch watch(device.engine());
    qApp->installEventFilter(&watch);
    {
        QPainter painter(&device);
        window.render(&painter);
    }
    qApp->removeEventFilter(&watch);
    return device.engine().taken();
}

} // namespace holdfast::app::test
