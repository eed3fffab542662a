# SPDX-License-Identifier: GPL-3.0-or-later
# The Debian package: `cpack -G DEB` in a build folder that is built.
file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/changelog "${DEBIAN_CHANGELOG}")
holdfast_compressed(${CMAKE_CURRENT_BINARY_DIR}/changelog ${HOLDFAST_DOC_DIR} changelog)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME holdfast)
set(CPACK_PACKAGE_VENDOR "The Holdfast team")
set(CPACK_PACKAGE_CONTACT ${HOLDFAST_MAINTAINER})
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "orders, stock and press work of a custom garment workshop")
set(CPACK_PACKAGE_DESCRIPTION
    "Holdfast keeps the orders, stock and press work of a workshop of one to
three people who make custom garments from cut, heat-applied film and sell
them from a fair table. It takes the order and promises a day that can be
kept, keeps spoiled material away from the press, leads through each
garment's steps, and hands it over with the right washing advice. One file
is the whole shop, and no network is needed.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ
                                                WORLD_EXECUTE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS libcanberra-pulse)
set(CPACK_DEBIAN_PACKAGE_SUGGESTS cups)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)
include(CPack)
