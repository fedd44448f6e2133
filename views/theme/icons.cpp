#include "views/theme/icons.h"

#include "views/theme/theme_hub.h"

#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QPixmapCache>
#include <QSvgRenderer>

#include <cmath>

namespace rickyard::views {

namespace {

QString pathOf(const QString &name)
{
    return QStringLiteral(":/rickyard/resources/icons/%1.svg").arg(name);
}

class TintedEngine : public QIconEngine
{
public:
    TintedEngine(QString name, Role role) : name_(std::move(name)), role_(role) {}

    void paint(QPainter *painter, const QRect &rectangle, QIcon::Mode mode, QIcon::State) override
    {
        paintIcon(painter, rectangle, name_, tint(mode));
    }

    QPixmap pixmap(const QSize &size, QIcon::Mode mode, QIcon::State) override
    {
        return iconPixmap(name_, tint(mode), std::min(size.width(), size.height()), 1.0);
    }

    QPixmap scaledPixmap(const QSize &size, QIcon::Mode mode, QIcon::State, qreal) override
    {
        return iconPixmap(name_, tint(mode), std::min(size.width(), size.height()), 1.0);
    }

    QIconEngine *clone() const override { return new TintedEngine(name_, role_); }
    QString iconName() override { return name_; }
    bool isNull() override { return !hasIcon(name_); }

private:
    QColor tint(QIcon::Mode mode) const
    {
        return theme().color(mode == QIcon::Disabled ? Role::InkFaint : role_);
    }

    QString name_;
    Role role_;
};

} // namespace

bool hasIcon(const QString &name)
{
    return QFile::exists(pathOf(name));
}

QIcon icon(const QString &name, Role role)
{
    return hasIcon(name) ? QIcon(new TintedEngine(name, role)) : QIcon();
}

QPixmap iconPixmap(const QString &name, const QColor &color, int size, qreal ratio)
{
    const int side = std::max(1, static_cast<int>(std::lround(size * ratio)));
    const QString key =
        QStringLiteral("rickyard-icon/%1/%2/%3").arg(name, color.name(QColor::HexArgb)).arg(side);
    QPixmap pixmap;
    if (!QPixmapCache::find(key, &pixmap)) {
        pixmap = QPixmap(side, side);
        pixmap.fill(Qt::transparent);
        QSvgRenderer renderer(pathOf(name));
        QPainter painter(&pixmap);
        painter.setRenderHint(QPainter::Antialiasing);
        renderer.render(&painter, QRectF(0, 0, side, side));
        painter.setCompositionMode(QPainter::CompositionMode_SourceIn);
        painter.fillRect(pixmap.rect(), color);
        painter.end();
        QPixmapCache::insert(key, pixmap);
    }
    pixmap.setDevicePixelRatio(ratio);
    return pixmap;
}

void paintIcon(QPainter *painter, const QRectF &rectangle, const QString &name, const QColor &color)
{
    const double side = std::min(rectangle.width(), rectangle.height());
    const QRectF square(rectangle.center().x() - side / 2.0, rectangle.center().y() - side / 2.0,
                        side, side);
    const qreal ratio = painter->device()->devicePixelRatioF();
    const QPixmap pixmap = iconPixmap(name, color, static_cast<int>(std::lround(side)), ratio);
    painter->drawPixmap(square.topLeft(), pixmap);
}

QIcon applicationIcon()
{
    return QIcon(pathOf(QStringLiteral("rickyard")));
}

} // namespace rickyard::views
