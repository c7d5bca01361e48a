# Warnings and sanitizers for our own targets only: a user's build gets neither.
add_library(libtexture_options INTERFACE)
target_compile_options(libtexture_options INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion)
if(LIBTEXTURE_WERROR)
  target_compile_options(libtexture_options INTERFACE -Werror)
endif()
if(LIBTEXTURE_SANITIZE)
  target_compile_options(libtexture_options INTERFACE
    -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(libtexture_options INTERFACE -fsanitize=address,undefined)
endif()
