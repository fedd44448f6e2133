// The program's own line icons (resources/icons/NAME.svg), tinted in code so that one drawing
// serves every theme, state and screen density.
#pragma once

#include "views/theme/theme.h"

#include <QIcon>
#include <QPixmap>
#include <QRectF>

class QPainter;

namespace rickyard::views {

// An icon whose colour follows the application's theme by itself; disabled icons are fainter.
// An unknown name gives an empty icon.
QIcon icon(const QString &name, Role role = Role::Ink);

// Paints an icon into a rectangle in one colour.
void paintIcon(QPainter *painter, const QRectF &rectangle, const QString &name,
               const QColor &color);

// A tinted picture of size x size device-independent pixels.
QPixmap iconPixmap(const QString &name, const QColor &color, int size, qreal ratio);

// The program's own icon, in its own colours.
QIcon applicationIcon();

bool hasIcon(const QString &name);

} // namespace rickyard::views
